//! Joists, levels, ground, roof water and the order list, on the phone and without a host.

use crate::carpenter::{phone_with_a_job, phone_with_pins_and_a_job, sample_without_a_host};
use crate::desk::{against_the_schema, office};
use crate::harness::Phone;
use serde_json::json;

const JOISTS_PAGE: &str = "Joists, levels, ground and roof water";

#[tokio::test]
async fn the_sample_judges_its_joists_and_lists_what_to_order() {
    let mut phone = sample_without_a_host().await;
    phone.open_page(JOISTS_PAGE, "under").await;
    phone.wait_for("2 of 9 can stay").await;
    phone
        .wait_for(
            "Found soft at 8' 1\", yet the awl stops there: log how deep it goes in, or take back which is wrong.",
        )
        .await;
    phone.wait_for("262 gallons for each inch of rain").await;
    phone.wait_until("levels are drawn", "document.querySelectorAll('#under svg .cut').length > 0").await;
    phone.screenshot("under").await;
    phone.check_accessible().await;
    phone.scroll_to("#under svg").await;
    phone.screenshot("under-levels").await;
    phone.open_page("Order list", "orders").await;
    phone.wait_for("2 × 10 No. 2, ripped to 7 1/2\", 10 ft").await;
    phone.wait_for("3 sticks").await;
    phone.check_accessible().await;
    phone.screenshot("orders").await;
    phone.finish().await;
}

/// One field's value is logged, and the page made anew, while somebody types in the next.
#[tokio::test]
async fn what_is_half_typed_goes_on_where_it_was_when_the_page_is_made_anew() {
    let (_server, mut phone) = phone_with_a_job().await;
    phone.measure_a_room().await;
    phone.open_page(JOISTS_PAGE, "under").await;
    phone.unfold(".later").await;
    let depth = field(r#"["joists","depth"]"#);
    phone.act("the depth is typed", &format!("{depth}.focus()")).await;
    phone.type_keys("7 ").await;
    say(&mut phone, r#"["joists","breadth"]"#, "1 1/2").await;
    stands(&mut phone, r#"["joists","breadth"]"#, "1 1/2").await;
    phone.type_keys("1/4").await;
    phone.reads("what was typed on", &format!("{depth}.value"), "7 1/4").await;
    phone.act("the depth is left", &format!("{depth}.blur()")).await;
    stands(&mut phone, r#"["joists","depth"]"#, "7 1/4").await;
    phone.go_to("Log").await;
    phone.wait_for("All joists, depth: 7 1/4 in").await;
    let logged = "(document.body.innerText.match(/All joists, depth/g) ?? []).length";
    // Nothing half typed was logged.
    phone.reads("how often the depth is in the log", logged, 1).await;
    phone.finish().await;
}

/// From the first measurement to the printed order list, by thumb, the host gone.
#[tokio::test]
async fn a_house_is_measured_judged_ordered_for_and_sent_and_what_changes_is_marked() {
    let (mut server, mut phone) = phone_with_pins_and_a_job().await;
    phone.wait_until_kept().await;
    server.kill();
    phone.measure_a_room().await;
    read_levels(&mut phone).await;
    push_an_awl_into_joist_4(&mut phone).await;
    read_each_joist(&mut phone).await;

    phone.open_page(JOISTS_PAGE, "under").await;
    phone.wait_for("What is to become of the joists? Not enough to say").await;
    phone.wait_for("Measure its breadth, its depth, its clear span").await;
    phone.unfold(".later").await;
    say(&mut phone, r#"["joists","depth"]"#, "seven").await;
    phone.wait_for("All joists, depth:").await;
    phone.screenshot("under-refused").await;
    for (what, typed) in [("breadth", "1 1/2"), ("depth", "7 1/4"), ("clear span", "7' 8"), ("bearing", "3")] {
        say(&mut phone, &format!(r#"["joists","{what}"]"#), typed).await;
        stands(&mut phone, &format!(r#"["joists","{what}"]"#), typed).await;
    }
    for (question, answer) in OF_ALL_JOISTS {
        choose(&mut phone, question, answer).await;
    }
    for joist in [1, 2, 3, 5, 6] {
        choose_for(&mut phone, joist, "Awl, both ends and the middle", "stops everywhere").await;
    }
    phone.wait_for("find its stamp, or have somebody grade it").await;
    phone.screenshot("under-forms").await;
    phone
        .wait_until(
            "a joist's form says what counts for it",
            r#"document.querySelector(`input[placeholder="as all joists: 7 1/4 in"]`) !== null"#,
        )
        .await;
    choose(&mut phone, "Species group, by stamp", "Hem-fir").await;
    choose(&mut phone, "Grade, by stamp", "#2").await;
    phone.wait_for("What is to become of the joists? 5 of 6 can stay").await;
    phone.wait_for("Sister it: joist 4.").await;
    choose(&mut phone, "Cover the ground", "yes").await;
    say(&mut phone, r#"["house","vent area"]"#, "50").await;
    phone.wait_for("4 vents").await;
    for (what, typed) in [("sister breadth", "1 1/2"), ("sister depth", "7 1/4")] {
        say(&mut phone, &format!(r#"["house","{what}"]"#), typed).await;
        stands(&mut phone, &format!(r#"["house","{what}"]"#), typed).await;
    }
    choose(&mut phone, "Sisters and new joists, incised", "no").await;
    phone.check_accessible().await;
    phone.screenshot("under-said").await;

    phone.open_page("Order list", "orders").await;
    phone.wait_for("2 in lumber 7 1/4\" deep, 8 ft").await;
    phone.wait_for("Ground cover").await;
    phone.unfold(".later").await;
    phone.wait_for("nothing here is a price that somebody asks").await;
    say(&mut phone, r#"[{"order":"Foundation vents"},"on hand"]"#, "1").await;
    phone.wait_for("3 vents").await;
    phone.nothing_is_unsaved().await;

    let file = phone.hand_over(1).await;
    assert_eq!(against_the_schema(&std::fs::read(&file).unwrap()), Vec::<String>::new());
    let text = std::fs::read_to_string(&file).unwrap();
    assert!(text.contains("\"order: Foundation vents\"") && text.contains("3 vents"), "the list is in the file");
    let csv = office(&["orders", file.to_str().unwrap()]);
    assert!(csv.contains("Ground and air,Foundation vents,4,vent,0,1,3,,,"), "{csv}");

    phone.open_page("Order list", "orders").await;
    phone.unfold(".later").await;
    say(&mut phone, r#"[{"order":"Foundation vents"},"on hand"]"#, "2").await;
    phone.wait_for("Was 3.").await;
    phone.wait_for("1 changed since revision 1 was sent").await;
    phone.tap("Save as a table (CSV)").await;
    let table = phone.wait_for_download("orders.csv").await;
    assert!(std::fs::read_to_string(table).unwrap().contains("Foundation vents,4,vent,0,2,2,,was 3,"));
    phone.put_on_paper().await;
    phone
        .wait_until("the table is on paper", "document.querySelector('#orders table').getClientRects().length > 0")
        .await;
    phone.wait_for("Soft corner Order list").await;
    phone.screenshot("orders-printed").await;
    phone.finish().await;
}

/// What is alike for all joists of the room.
const OF_ALL_JOISTS: [(&str, &str); 5] = [
    ("What is it?", "sawn lumber"),
    ("Bears on", "wood or metal"),
    ("Ends held upright by", "rim joist"),
    ("Over the girder it", "does not reach one"),
    ("Notches and holes", "none"),
];

/// The joist after the last level. From 3 to 4 ft along it the awl goes in by half an inch.
async fn push_an_awl_into_joist_4(phone: &mut Phone) {
    phone.take_up("Look").await;
    phone.ask_for("What is logged", "Awl").await;
    phone.is_asked("Joist 4, lower edge: awl, from").await;
    phone.keypad("3 feet save").await;
    phone.is_asked("Joist 4, lower edge: awl, to").await;
    phone.keypad("4 feet save").await;
    phone.is_asked("Joist 4, lower edge: awl, how deep").await;
    phone.keypad("fractions 1/2 save").await;
    phone.said_back("Joist 4, lower edge", "1/2\"").await;
}

async fn read_each_joist(phone: &mut Phone) {
    phone.take_up("Meter").await;
    phone.open_question().await;
    for _ in 0..3 {
        phone.tap("joist −").await;
    }
    phone.tap("done").await;
    for joist in 1..=6 {
        phone.is_asked(&format!("Joist {joist}, lower edge")).await;
        phone.keypad("7 save").await;
    }
}

async fn read_levels(phone: &mut Phone) {
    phone.take_up("Level").await;
    phone.is_asked("Joist 1, upper edge").await;
    phone.tap("anywhere along it").await;
    phone.keypad("3 feet save").await;
    for drop in ["1 4", "1 5", "1 4"] {
        phone.keypad(&format!("{drop} save")).await;
    }
}

/// Types into a field and leaves it.
async fn say(phone: &mut Phone, key: &str, typed: &str) {
    let type_it = format!(
        "const field = {}; field.value = {}; field.dispatchEvent(new Event('input'));
        field.dispatchEvent(new Event('change'))",
        field(key),
        json!(typed)
    );
    phone.act(&format!("{typed} is typed into {key}"), &type_it).await;
}

/// Waits until what was typed is what is so, and no draft; its unit stands behind it then.
async fn stands(phone: &mut Phone, key: &str, typed: &str) {
    let so = format!("(field => field.closest('label').matches('.unanswered') ? null : field.value)({})", field(key));
    phone.read(&format!("{typed} stands in {key}"), &so, |stands: &String| stands.starts_with(typed)).await;
}

fn field(key: &str) -> String {
    format!("document.querySelector(`input[data-key=\"${{CSS.escape('{key}')}}\"]`)")
}

/// Answers a question in the form of one joist.
async fn choose_for(phone: &mut Phone, joist: usize, question: &str, answer: &str) {
    let asked = format!("document.querySelectorAll(`[role=group][aria-label=\"{question}\"]`)[{}]", joist - 1);
    phone
        .tap_what(&format!("[...{asked}.querySelectorAll('button')].find(key => key.textContent === '{answer}')"))
        .await;
    let stands = format!("{asked}.querySelector('[aria-pressed=true]').textContent");
    phone.reads(&format!("what stands for joist {joist} as “{question}”"), &stands, answer).await;
}

async fn choose(phone: &mut Phone, question: &str, answer: &str) {
    phone.unfold(".later").await;
    phone.say_to(question, answer).await;
}
