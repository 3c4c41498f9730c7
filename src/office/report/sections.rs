//! The report's sections, each a function of the job to Markdown.

use super::markdown::{list, plain, table};
use duckboard::engine::cautions;
use duckboard::engine::describe::counted;
use duckboard::engine::job::Job;
use duckboard::engine::take::Units;
use duckboard::file::tables;
use duckboard::file::{ENGINE, JobFile, Salvage, SnapshotFigure};

pub(crate) fn title_block(file: &JobFile, job: &Job) -> String {
    let mut rows: Vec<(&str, String)> = Vec::new();
    let mut row = |name, value: Option<String>| rows.extend(value.map(|value| (name, value)));
    row("Office number", job.office_number().map(ToString::to_string));
    row("Where", job.site().map(ToString::to_string));
    row("Built", job.year_built().map(|year| year.get().to_string()));
    row("Crawl space", job.venting().map(|venting| venting.label().to_owned()));
    row("Along joists from", job.measured_from().map(ToString::to_string));
    row("Revision", Some(file.revision.to_string()));
    row("File made", Some(format!("{} by {}", file.made.at, file.made.engine)));
    row("Computed by", Some(ENGINE.to_owned()));
    row("Job", Some(file.job.id.to_string()));
    let rows: Vec<Vec<String>> = rows.into_iter().map(|(name, value)| vec![name.to_owned(), value]).collect();
    let invented = if job.is_invented() {
        "**INVENTED SAMPLE: nothing in this report was measured at a real house.**\n\n"
    } else {
        ""
    };
    format!("# {}\n\n{invented}{}", plain(&job.heading()), table(&["", ""], &rows))
}

pub(super) fn missing_and_assumed(salvage: &Salvage, job: &Job, figures: &[SnapshotFigure]) -> String {
    let file = &salvage.file;
    let mut items: Vec<String> =
        salvage.faults.iter().map(|fault| format!("Damaged, and not in this report: {fault}")).collect();
    items.extend(file.left_out.iter().map(|mark| format!("Left out of the file on purpose: {mark}")));
    for figure in figures {
        let name = figure.name.trim_end_matches('?');
        items.extend(figure.missing.iter().map(|need| format!("{name}: not enough to say; {need}")));
        items.extend(figure.assumed.iter().map(|assumed| format!("{name}: assumed {assumed}")));
    }
    let mut count = |number: usize, what: &str, then: &str| {
        if number > 0 {
            items.push(format!("{} {then}", counted(number, what)));
        }
    };
    count(
        job.conflicts.len(),
        "thing",
        "corrected in two ways, or taken back too: the last correction stands in until somebody picks",
    );
    count(job.faults.len(), "entry", "left out: what it refers to is not in the file, or cannot be");
    count(job.unknown.len(), "entry", "that this version cannot read wholly");
    count(job.absent.iter().count(), "entry", "not here: left out of a file, or damaged");
    let absent = tables::photos(job).iter().filter(|row| bytes_of(file, row).is_none()).count();
    count(absent, "photo", "named, but not in the file");
    let body = if items.is_empty() { "Nothing.\n".to_owned() } else { list(&items) };
    format!("## Missing and assumed\n\n{body}")
}

pub(super) fn figures(figures: &[SnapshotFigure]) -> String {
    let rows = figures.iter().map(|figure| {
        let sources: Vec<String> =
            figure.sources.iter().map(|source| format!("{} ({})", source.title, source.mark)).collect();
        let value = figure.value.clone().unwrap_or_else(|| "not enough to say".to_owned());
        vec![figure.name.clone(), value, figure.doubts.join(" "), figure.rule.clone(), sources.join("; ")]
    });
    section("Figures", &["What", "Value", "Bear in mind", "Rule", "Source"], rows)
}

/// Everything that was measured and seen.
pub(super) fn tables(job: &Job) -> String {
    let tables = tables::printed(job, Units::default());
    let sections = tables.map(|table| section(table.title, &table.columns, table.rows.into_iter()));
    sections.join("\n")
}

pub(super) fn photos(file: &JobFile, job: &Job) -> String {
    let rows = tables::photos(job);
    let mut text = String::from("## Photos\n");
    if rows.is_empty() {
        text.push_str("\nNone.\n");
    }
    for (nth, row) in rows.iter().enumerate() {
        let said = [row.caption.as_str(), row.place.as_str()].into_iter().filter(|said| !said.is_empty());
        let caption = plain(&said.collect::<Vec<_>>().join("; "));
        let who = plain(&format!("{}, {}", row.logged.when(), row.logged.by));
        let picture = match bytes_of(file, row) {
            Some(name) => format!("![{caption}](photos/{name})"),
            None => "(not in the file)".to_owned(),
        };
        text.push_str(&format!("\n{picture}\n\nPhoto {}. {caption} ({who})\n", nth + 1));
    }
    text
}

/// Every caution that the job calls for, with its source and who has read it.
pub(super) fn cautions(job: &Job) -> String {
    let raised = cautions::all_triggered(job).into_iter().map(|raised| {
        let caution = raised.caution;
        let cited: Vec<String> = caution.sources.iter().map(|source| source.citation().to_string()).collect();
        let read =
            raised.read.first().map_or_else(|| "not read yet".to_owned(), |stamp| format!("read by {}", stamp.by));
        plain(&format!("{}: {} {} {}; {read}", caution.title, caution.words, raised.because, cited.join("; ")))
    });
    let raised: Vec<String> = raised.collect();
    format!("## Cautions\n\n{}\n{}\n", list(&raised), cautions::LAST_WORD)
}

pub(super) fn line_to_sign() -> String {
    "## Signed\n\nRead and found right:\n\n\
     Name ________________________________  Date ______________\n\n\
     Local code and licensed practice decide; this report does not replace either.\n"
        .to_owned()
}

/// The name of a photo's file, if the job file has its bytes.
fn bytes_of(file: &JobFile, row: &tables::PhotoRow) -> Option<String> {
    file.photo(row.sha256).filter(|photo| photo.bytes.is_some()).map(duckboard::file::FilePhoto::file_name)
}

fn section(title: &str, columns: &[&str], rows: impl Iterator<Item = Vec<String>>) -> String {
    let rows: Vec<Vec<String>> = rows.collect();
    let body = if rows.is_empty() { "None.\n".to_owned() } else { table(columns, &rows) };
    format!("## {title}\n\n{body}")
}
