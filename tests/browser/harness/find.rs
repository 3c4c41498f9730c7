//! Finding things the way a person does: by what they are called and what they are.
//! The names and roles are those that the browser tells a screen reader.

use super::phone::{LOOK, Phone};
use serde_json::{Value, json};
use std::collections::BTreeMap;
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
pub(super) struct Thing {
    role: String,
    name: String,
    node: Value,
    /// What it stands in, by name, innermost first.
    within: Vec<String>,
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
        self.tap_at(&Wanted::named(name)).await;
    }

    /// Taps the thing of this role (`button`, `tab`, `textbox`, …) with this name.
    pub async fn tap_role(&mut self, role: &str, name: &str) {
        self.tap_at(&Wanted::Thing { role: Some(role), group: None, name }).await;
    }

    /// Taps the thing with this name in the group or region of that name: two questions
    /// may be answered by keys that say the same.
    pub async fn tap_in(&mut self, group: &str, name: &str) {
        self.tap_at(&Wanted::Thing { role: None, group: Some(group), name }).await;
    }

    /// Taps what a JavaScript expression finds: for what has no name, or one that changes
    /// and would be another between reading it and tapping.
    pub async fn tap_what(&mut self, expression: &str) {
        self.tap_at(&Wanted::Found(expression)).await;
    }

    /// Where the thing with this name is, scrolled into view.
    pub async fn place_of(&mut self, name: &str) -> Place {
        self.reach(&Wanted::named(name)).await
    }

    /// Waits until there is a thing with just this role and name.
    pub async fn sees(&mut self, role: &str, name: &str) {
        let start = Instant::now();
        while !self.on_screen().await.iter().any(|thing| thing.role == role && thing.name == name) {
            if start.elapsed() > self.patience {
                self.fail(&format!("there is no {role} called “{name}”")).await;
            }
            sleep(LOOK).await;
        }
    }

    /// Everything on the page that can be tapped, with its name.
    pub(super) async fn on_screen(&self) -> Vec<Thing> {
        let things = self.things().await;
        things.into_iter().filter(|thing| TAPPABLE.contains(&thing.role.as_str())).collect()
    }

    async fn tap_at(&mut self, wanted: &Wanted<'_>) {
        let place = self.reach(wanted).await;
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
    async fn reach(&mut self, wanted: &Wanted<'_>) -> Place {
        let start = Instant::now();
        loop {
            let why = match self.uncovered(wanted).await {
                Ok(place) => return place,
                Err(why) => why,
            };
            if start.elapsed() > self.patience {
                self.fail(&why).await;
            }
            sleep(LOOK).await;
        }
    }

    async fn uncovered(&self, wanted: &Wanted<'_>) -> Result<Place, String> {
        match *wanted {
            Wanted::Found(expression) => self.uncover(expression, &self.object(expression).await?).await,
            Wanted::Thing { role, group, name } => {
                let thing = best(self.things().await, role, group, name)?;
                let object = self.try_cdp("DOM.resolveNode", json!({ "backendNodeId": thing.node })).await?;
                self.uncover(&thing, &object["object"]["objectId"]).await
            }
        }
    }

    /// Scrolls a thing into view and looks whether it is free, still and enabled.
    async fn uncover(&self, thing: impl fmt::Display, id: &Value) -> Result<Place, String> {
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
        let by_id = nodes.iter().filter_map(|node| Some((node["nodeId"].as_str()?, node))).collect();
        nodes.iter().filter(|node| node["ignored"] != true).filter_map(|node| thing(node, &by_id)).collect()
    }
}

/// What is looked for.
enum Wanted<'a> {
    /// Something with a name.
    Thing { role: Option<&'a str>, group: Option<&'a str>, name: &'a str },
    /// What a JavaScript expression finds.
    Found(&'a str),
}

impl<'a> Wanted<'a> {
    fn named(name: &'a str) -> Self {
        Self::Thing { role: None, group: None, name }
    }
}

fn thing(node: &Value, by_id: &BTreeMap<&str, &Value>) -> Option<Thing> {
    let name = name_of(node)?;
    let role = node["role"]["value"].as_str()?.to_string();
    let above = |node: &&Value| by_id.get(node["parentId"].as_str()?).copied();
    let within = std::iter::successors(above(&node), above).filter_map(name_of).collect();
    let node = node.get("backendDOMNodeId")?.clone();
    (role != "InlineTextBox").then_some(Thing { role, name, node, within })
}

fn name_of(node: &Value) -> Option<String> {
    let name = node["name"]["value"].as_str()?.split_whitespace().collect::<Vec<_>>().join(" ");
    (!name.is_empty()).then_some(name)
}

/// The one thing that is meant, or why it cannot be told.
fn best(mut things: Vec<Thing>, role: Option<&str>, group: Option<&str>, name: &str) -> Result<Thing, String> {
    if let Some(group) = group {
        things.retain(|thing| thing.within.iter().any(|within| within == group));
    }
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
        None => {
            let place = group.map_or_else(String::new, |group| format!(" in “{group}”"));
            Err(format!("there is no {kind} called “{name}”{place}"))
        }
        Some([one]) => Ok((*one).clone()),
        Some(many) => {
            let many: Vec<_> = many.iter().map(ToString::to_string).collect();
            Err(format!("“{name}” could mean any of: {}", many.join(", ")))
        }
    }
}

/// Two frames apart, because a thing on the move is tapped beside. What scrolling just
/// into view leaves under a bar that stays put, a person scrolls on to the middle.
const UNCOVER: &str = r"async function () {
  const element = this.nodeType === Node.ELEMENT_NODE ? this : this.parentElement;
  if (!element?.isConnected) return { why: 'it is gone' };
  if (element.disabled || element.ariaDisabled === 'true') return { why: 'it is disabled' };
  const frame = () => new Promise(done => requestAnimationFrame(done));
  const labels = [...(element.labels ?? [])];
  let why;
  for (const block of ['nearest', 'center']) {
    element.scrollIntoView({ block, inline: 'nearest', behavior: 'instant' });
    const before = element.getBoundingClientRect();
    await frame(); await frame();
    const { x, y, width, height } = element.getBoundingClientRect();
    if (x !== before.x || y !== before.y) return { why: 'it moves' };
    if (!width || !height) return { why: 'it has no size' };
    const hit = document.elementFromPoint(x + width / 2, y + height / 2);
    if ([element, ...labels].some(part => part.contains(hit))) return { x, y, width, height };
    why = hit ? `it is covered by ${hit.outerHTML.slice(0, 120)}` : 'it is off the screen';
  }
  return { why };
}";
