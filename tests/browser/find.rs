//! Finding things the way a person does: by what they are called and what they are.
//! The names and roles are those that the browser tells a screen reader.

use crate::phone::{LOOK, Phone};
use serde_json::{Value, json};
use std::fmt;
use tokio::time::{Instant, sleep};

/// What a thumb may be meant for. Plain text is the last resort.
const TAPPABLE: [&str; 19] = [
    "button",
    "checkbox",
    "combobox",
    "DisclosureTriangle",
    "gridcell",
    "LabelText",
    "link",
    "listbox",
    "menuitem",
    "menuitemcheckbox",
    "menuitemradio",
    "option",
    "radio",
    "searchbox",
    "slider",
    "spinbutton",
    "switch",
    "tab",
    "textbox",
];

/// Something on the page that has a name.
#[derive(Debug, Clone)]
pub struct Thing {
    pub role: String,
    pub name: String,
    node: Value,
}

impl fmt::Display for Thing {
    fn fmt(&self, to: &mut fmt::Formatter) -> fmt::Result {
        write!(to, "{} “{}”", self.role, self.name)
    }
}

/// Where something is on the screen, in CSS pixels.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Place {
    pub x: f64,
    pub y: f64,
    pub width: f64,
    pub height: f64,
}

impl Phone {
    /// Taps the thing with this name. An exact name goes before a part of one; two
    /// equally good things are a failure, and `tap_role` tells them apart.
    pub async fn tap(&mut self, name: &str) {
        self.tap_where(None, name).await;
    }

    /// Taps the thing of this role (`button`, `tab`, `textbox`, …) with this name.
    pub async fn tap_role(&mut self, role: &str, name: &str) {
        self.tap_where(Some(role), name).await;
    }

    /// Where the thing with this name is, scrolled into view.
    pub async fn place_of(&mut self, name: &str) -> Place {
        self.reach(None, name).await
    }

    /// Is there a thing with just this role and name now? It is not waited for.
    pub async fn has(&self, role: &str, name: &str) -> bool {
        self.on_screen().await.iter().any(|thing| thing.role == role && thing.name == name)
    }

    /// Everything on the page that can be tapped, with its name.
    pub async fn on_screen(&self) -> Vec<Thing> {
        let things = self.things().await;
        things.into_iter().filter(|thing| TAPPABLE.contains(&thing.role.as_str())).collect()
    }

    async fn tap_where(&mut self, role: Option<&str>, name: &str) {
        let place = self.reach(role, name).await;
        let (x, y) = (place.x + place.width / 2.0, place.y + place.height / 2.0);
        if self.screen.is_touch() {
            self.cdp("Input.dispatchTouchEvent", json!({ "type": "touchStart", "touchPoints": [{ "x": x, "y": y }] }))
                .await;
            self.cdp("Input.dispatchTouchEvent", json!({ "type": "touchEnd", "touchPoints": [] })).await;
        } else {
            for kind in ["mousePressed", "mouseReleased"] {
                let event = json!({ "type": kind, "x": x, "y": y, "button": "left", "clickCount": 1 });
                self.cdp("Input.dispatchMouseEvent", event).await;
            }
        }
    }

    /// Waits until there is one such thing and a finger can get at its middle.
    async fn reach(&mut self, role: Option<&str>, name: &str) -> Place {
        let end = Instant::now() + self.patience;
        loop {
            let why = match best(self.things().await, role, name) {
                Ok(thing) => match self.uncover(&thing).await {
                    Ok(place) => return place,
                    Err(why) => why,
                },
                Err(why) => why,
            };
            if Instant::now() > end {
                self.fail(&why).await;
            }
            sleep(LOOK).await;
        }
    }

    /// Scrolls a thing into view and looks whether it is free, still and enabled.
    async fn uncover(&self, thing: &Thing) -> Result<Place, String> {
        let object = self.try_cdp("DOM.resolveNode", json!({ "backendNodeId": thing.node })).await?;
        let id = &object["object"]["objectId"];
        let call =
            json!({ "functionDeclaration": UNCOVER, "objectId": id, "returnByValue": true, "awaitPromise": true });
        let found = self.try_cdp("Runtime.callFunctionOn", call).await?["result"]["value"].clone();
        if let Some(why) = found["why"].as_str() {
            return Err(format!("{thing} cannot be tapped: {why}"));
        }
        let number = |name: &str| found[name].as_f64().ok_or_else(|| format!("{thing} has no place"));
        Ok(Place { x: number("x")?, y: number("y")?, width: number("width")?, height: number("height")? })
    }

    async fn things(&self) -> Vec<Thing> {
        // While a page is being replaced there is nothing on it.
        let tree = self.try_cdp("Accessibility.getFullAXTree", json!({})).await.unwrap_or_default();
        let nodes = tree["nodes"].as_array().cloned().unwrap_or_default();
        nodes.iter().filter(|node| node["ignored"] != true).filter_map(thing).collect()
    }
}

fn thing(node: &Value) -> Option<Thing> {
    let name = node["name"]["value"].as_str()?.split_whitespace().collect::<Vec<_>>().join(" ");
    let role = node["role"]["value"].as_str()?.to_string();
    let node = node.get("backendDOMNodeId")?.clone();
    (!name.is_empty() && role != "InlineTextBox").then_some(Thing { role, name, node })
}

/// The one thing that is meant, or why it cannot be told.
fn best(things: Vec<Thing>, role: Option<&str>, name: &str) -> Result<Thing, String> {
    let fits = |thing: &Thing| match role {
        Some(role) => thing.role == role,
        None => TAPPABLE.contains(&thing.role.as_str()),
    };
    let (meant, rest): (Vec<_>, Vec<_>) = things.into_iter().partition(fits);
    let text = rest.into_iter().filter(|thing| role.is_none() && thing.role == "StaticText");
    let text: Vec<_> = text.collect();
    let exact = |thing: &&Thing| thing.name == name;
    let partly = |thing: &&Thing| thing.name.contains(name);
    let ranks: [Vec<&Thing>; 4] = [
        meant.iter().filter(exact).collect(),
        text.iter().filter(exact).collect(),
        meant.iter().filter(partly).collect(),
        text.iter().filter(partly).collect(),
    ];
    let kind = role.unwrap_or("thing");
    match ranks.iter().find(|rank| !rank.is_empty()).map(Vec::as_slice) {
        None => Err(format!("there is no {kind} called “{name}”")),
        Some([one]) => Ok((*one).clone()),
        Some(many) => {
            let many: Vec<_> = many.iter().map(ToString::to_string).collect();
            Err(format!("“{name}” could mean any of: {}", many.join(", ")))
        }
    }
}

/// Two frames apart, because a thing on the move is tapped beside.
const UNCOVER: &str = r"async function () {
  const element = this.nodeType === Node.ELEMENT_NODE ? this : this.parentElement;
  if (!element?.isConnected) return { why: 'it is gone' };
  if (element.disabled || element.ariaDisabled === 'true') return { why: 'it is disabled' };
  element.scrollIntoView({ block: 'nearest', inline: 'nearest', behavior: 'instant' });
  const frame = () => new Promise(done => requestAnimationFrame(done));
  const before = element.getBoundingClientRect();
  await frame(); await frame();
  const { x, y, width, height } = element.getBoundingClientRect();
  if (x !== before.x || y !== before.y) return { why: 'it moves' };
  if (!width || !height) return { why: 'it has no size' };
  const hit = document.elementFromPoint(x + width / 2, y + height / 2);
  if (!hit) return { why: 'it is off the screen' };
  const labels = [...(element.labels ?? [])];
  if (![element, ...labels].some(part => part.contains(hit)))
    return { why: `it is covered by ${hit.outerHTML.slice(0, 120)}` };
  return { x, y, width, height };
}";
