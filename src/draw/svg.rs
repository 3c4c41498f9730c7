//! Writes a drawing as SVG.
//!
//! Looks are left to the style sheet: every element carries its role as a class,
//! and there is no `style` attribute, which the page's content policy forbids. A
//! drawing that leaves the page takes its style sheet with it.

use super::{Anchor, Drawing, Item, Reads, Spot};
use std::fmt::{self, Display, Write};

/// From the middle of a capital down to the line it stands on, in ems: half of the
/// capitals' height in usual fonts.
const HALF_CAPITAL: f64 = 0.36;

/// The drawing as one `svg` element of class `drawing`, with its title as its name.
pub fn write(drawing: &Drawing) -> String {
    Svg { drawing, sheet: None }.to_string()
}

/// The drawing as a file of its own, with `sheet` as its style sheet.
pub fn write_alone(drawing: &Drawing, sheet: &str) -> String {
    Svg { drawing, sheet: Some(sheet) }.to_string()
}

struct Svg<'a> {
    drawing: &'a Drawing,
    sheet: Option<&'a str>,
}

impl Display for Svg<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Drawing { canvas, title, items, .. } = self.drawing;
        let (width, height) = (canvas.width_px, canvas.height_px);
        write!(f, r#"<svg xmlns="http://www.w3.org/2000/svg" class="drawing" role="img" "#)?;
        write!(f, r#"viewBox="0 0 {width} {height}" width="{width}" height="{height}">"#)?;
        write!(f, "<title>{}</title>", Escaped(title))?;
        if let Some(sheet) = self.sheet {
            write!(f, "<style>{}</style>", Escaped(sheet))?;
        }
        for item in items {
            write_item(f, item)?;
        }
        write!(f, "</svg>")
    }
}

fn write_item(f: &mut fmt::Formatter<'_>, item: &Item) -> fmt::Result {
    let class = item.role().class();
    match item {
        Item::Line { from, to, .. } => {
            let ((x1, y1), (x2, y2)) = (shown(*from), shown(*to));
            write!(f, r#"<line class="{class}" x1="{x1}" y1="{y1}" x2="{x2}" y2="{y2}"/>"#)
        }
        Item::Path { spots, closed, .. } => {
            write!(f, r#"<path class="{class}" d=""#)?;
            for (place, spot) in spots.iter().enumerate() {
                let (x, y) = shown(*spot);
                write!(f, "{}{x} {y}", if place == 0 { 'M' } else { 'L' })?;
            }
            write!(f, r#"{}"/>"#, if *closed { "Z" } else { "" })
        }
        Item::Text { at, anchor, reads, size, text, .. } => write_text(f, class, (*at, *anchor, *reads, *size), text),
        Item::Disc { at, radius, fill, .. } => {
            let ((x, y), r) = (shown(*at), Px(*radius));
            write!(f, r#"<circle class="{class}" cx="{x}" cy="{y}" r="{r}""#)?;
            if let Some(fill) = fill {
                write!(f, r#" fill="{fill}""#)?;
            }
            write!(f, "/>")
        }
        Item::Area { from, to, fill, percent, .. } => {
            let ((x, y), (width, height)) = (shown(*from), (Px(to.x - from.x), Px(to.y - from.y)));
            write!(
                f,
                r#"<rect class="{class}" x="{x}" y="{y}" width="{width}" height="{height}" fill="{fill}" fill-opacity="{}"/>"#,
                Px(f64::from(*percent) / 100.0)
            )
        }
        Item::Target { at, radius, arm, .. } => {
            let ((x, y), r) = (shown(*at), Px(*radius));
            write!(f, r#"<g class="{class}"><circle cx="{x}" cy="{y}" r="{r}"/>"#)?;
            let (left, top, across) = (Px(at.x - arm), Px(at.y - arm), Px(2.0 * arm));
            write!(f, r#"<path d="M{left} {y}h{across}M{x} {top}v{across}"/></g>"#)
        }
        Item::Cross { at, arm, .. } => {
            let (left, right, top, bottom) = (Px(at.x - arm), Px(at.x + arm), Px(at.y - arm), Px(at.y + arm));
            write!(f, r#"<path class="{class}" d="M{left} {top}L{right} {bottom}M{left} {bottom}L{right} {top}"/>"#)
        }
    }
}

type Lettered = (Spot, Anchor, Reads, f64);

fn write_text(f: &mut fmt::Formatter<'_>, class: &str, (at, anchor, reads, size): Lettered, text: &str) -> fmt::Result {
    let drop = HALF_CAPITAL * size;
    let anchor = match anchor {
        Anchor::Start => "start",
        Anchor::Middle => "middle",
        Anchor::End => "end",
    };
    write!(f, r#"<text class="{class}" font-size="{}" text-anchor="{anchor}" "#, Px(size))?;
    match reads {
        Reads::Across => write!(f, r#"x="{}" y="{}""#, Px(at.x), Px(at.y + drop))?,
        Reads::Up => {
            let (x, y) = shown(at);
            write!(f, r#"transform="translate({x} {y}) rotate(-90)" y="{}""#, Px(drop))?;
        }
    }
    write!(f, ">{}</text>", Escaped(text))
}

fn shown(spot: Spot) -> (Px, Px) {
    (Px(spot.x), Px(spot.y))
}

/// A pixel coordinate, to a hundredth.
struct Px(f64);

impl Display for Px {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        // Adding zero turns a negative zero into a plain one.
        write!(f, "{}", libm::round(self.0 * 100.0) / 100.0 + 0.0)
    }
}

/// Text as XML allows it: markup escaped, and characters that XML 1.0 has no way
/// to write replaced.
struct Escaped<'a>(&'a str);

impl Display for Escaped<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for letter in self.0.chars() {
            match letter {
                '&' => f.write_str("&amp;")?,
                '<' => f.write_str("&lt;")?,
                '>' => f.write_str("&gt;")?,
                '"' => f.write_str("&quot;")?,
                '\'' => f.write_str("&#39;")?,
                '\t' | '\n' | '\r' => f.write_char(' ')?,
                '\0'..='\x1f' | '\u{fffe}' | '\u{ffff}' => f.write_char('\u{fffd}')?,
                other => f.write_char(other)?,
            }
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::super::ramp::Colour;
    use super::super::{Canvas, Role};
    use super::*;
    use proptest::prelude::*;

    fn drawing(title: &str, items: Vec<Item>) -> Drawing {
        let canvas = Canvas { width_px: 100, height_px: 50 };
        Drawing { canvas, title: title.into(), items, frame: None, unplaced: Vec::new() }
    }

    fn text(text: &str, reads: Reads) -> Item {
        let at = Spot { x: 10.0, y: 20.0 };
        Item::Text { at, anchor: Anchor::Middle, reads, size: 13.0, text: text.into(), role: Role::DimensionText }
    }

    #[test]
    fn a_drawing_is_one_image_with_a_name() {
        let svg = write(&drawing("Laundry", vec![]));
        let document = roxmltree::Document::parse(&svg).unwrap();
        let root = document.root_element();
        assert_eq!(root.attribute("role"), Some("img"));
        assert_eq!(root.attribute("viewBox"), Some("0 0 100 50"));
        assert_eq!(
            root.first_element_child().map(|title| (title.tag_name().name(), title.text())),
            Some(("title", Some("Laundry")))
        );
    }

    #[test]
    fn only_a_reading_brings_its_own_colour() {
        let disc = |fill| Item::Disc { at: Spot::default(), radius: 9.0, fill, role: Role::Reading };
        let svg = write(&drawing("", vec![disc(Some(Colour::BLACK)), disc(None)]));
        assert!(svg.contains(r##"<circle class="reading" cx="0" cy="0" r="9" fill="#000000"/>"##), "{svg}");
        assert_eq!(svg.matches("fill=").count(), 1);
    }

    #[test]
    fn text_that_reads_up_is_turned_about_its_own_spot() {
        let svg = write(&drawing("", vec![text("9' 10\"", Reads::Up)]));
        assert!(svg.contains(r#"transform="translate(10 20) rotate(-90)""#), "{svg}");
        assert!(svg.contains("9&#39; 10&quot;"));
    }

    #[test]
    fn coordinates_are_rounded_to_a_hundredth() {
        let shown: Vec<_> = [1.0 / 3.0, -0.001, 12.0, 2.5].map(|px| Px(px).to_string()).into();
        assert_eq!(shown, ["0.33", "0", "12", "2.5"]);
    }

    proptest! {
        #[test]
        fn whatever_is_typed_the_file_is_well_formed_and_says_it(words in any::<String>()) {
            let svg = write(&drawing(&words, vec![text(&words, Reads::Across)]));
            let document = roxmltree::Document::parse(&svg);
            prop_assert!(document.is_ok(), "{:?}", document.err());
            let document = document.unwrap();
            let element = document.descendants().find(|node| node.tag_name().name() == "text");
            let read = element.and_then(|node| node.text()).unwrap_or_default();
            let unwritable = |c: char| c.is_control() || matches!(c, '\u{fffe}' | '\u{ffff}');
            prop_assert_eq!(read.chars().count(), words.chars().count());
            prop_assert!(read.chars().zip(words.chars()).all(|(read, typed)| read == typed || unwritable(typed)));
        }
    }
}
