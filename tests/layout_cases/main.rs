#![allow(missing_docs, clippy::all, clippy::unwrap_used, clippy::indexing_slicing, reason = "scratch")]
use duckboard::engine::sheets::layout::{
    case::*,
    check::check,
    search::{Search, Step},
};
use std::time::{Duration, Instant};
fn main() {
    let dir = std::env::args().nth(1).unwrap();
    let out = std::env::args().nth(2).unwrap();
    let only = std::env::args().nth(3);
    let secs: f64 = std::env::args().nth(4).map_or(5.0, |s| s.parse().unwrap());
    std::fs::create_dir_all(&out).unwrap();
    let mut files: Vec<_> = std::fs::read_dir(dir).unwrap().map(|f| f.unwrap().path()).collect();
    files.sort();
    let (mut ts, mut tp) = (0, 0);
    for f in files {
        let v: serde_json::Value = serde_json::from_str(&std::fs::read_to_string(&f).unwrap()).unwrap();
        let id = v["id"].as_str().unwrap().to_owned();
        if let Some(o) = &only {
            if o != "all" && !id.starts_with(o.as_str()) {
                continue;
            }
        }
        let i = |k: &str| v[k].as_i64().unwrap() as i32;
        let ring = |v: &serde_json::Value| -> Vec<(i32, i32)> {
            v.as_array()
                .unwrap()
                .iter()
                .map(|p| (p[0].as_i64().unwrap() as i32, p[1].as_i64().unwrap() as i32))
                .collect()
        };
        let req = Request {
            outline: ring(&v["outline"]),
            holes: v["holes"].as_array().unwrap().iter().map(ring).collect(),
            joists: v["joists"].as_array().unwrap().iter().map(|x| x.as_i64().unwrap() as i32).collect(),
            joist_width: i("joist_width"),
            sheet: Sheet {
                length: v["sheet"]["length"].as_i64().unwrap() as i32,
                width: v["sheet"]["width"].as_i64().unwrap() as i32,
            },
            gap: i("gap"),
            kerf: i("kerf"),
            min_rip: i("min_rip"),
            min_bays: i("min_bays") as usize,
            stagger: i("stagger_joists") as usize,
        };
        let t = Instant::now();
        let case = Case::new(req).unwrap();
        let mut s = Search::new(case);
        let (mut first, mut proof) = (None, None);
        let mut longest = Duration::ZERO;
        loop {
            let u = Instant::now();
            let r = s.step();
            longest = longest.max(u.elapsed());
            if r == Step::Better && first.is_none() {
                first = Some(t.elapsed());
            }
            if s.is_proven() && proof.is_none() {
                proof = Some(t.elapsed());
            }
            if r == Step::Done || t.elapsed().as_secs_f64() > secs {
                break;
            }
        }
        let l = s.best().unwrap();
        let cut = check(s.case(), l).unwrap_or_else(|e| {
            println!("BROKEN {e:?}");
            0
        });
        ts += l.sheets();
        tp += l.pieces.len();
        println!(
            "{id} sheets {} pieces {} cut {cut} ({}) bound {} first {:?} proof {:?} total {:?} steps {} longest {longest:?}",
            l.sheets(),
            l.pieces.len(),
            l.cut,
            s.bound(),
            first.unwrap(),
            proof,
            t.elapsed(),
            s.steps()
        );
        let pieces: Vec<_> = l.pieces.iter().map(|p| serde_json::json!({"course": p.course, "x0": p.x.0, "x1": p.x.1, "y0": l.levels[p.course].0, "y1": l.levels[p.course].1, "sheet": p.sheet, "sx": p.on_sheet.0, "sy": p.on_sheet.1, "w": p.size.width, "h": p.size.height})).collect();
        std::fs::write(
            format!("{out}/{id}.json"),
            serde_json::json!({"id": id, "sheets": l.sheets(), "pieces": pieces}).to_string(),
        )
        .unwrap();
    }
    println!("sheets {ts} pieces {tp}");
}
