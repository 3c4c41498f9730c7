//! Which task does what.

use crate::args::{Input, Office, Task};
use crate::trouble::Trouble;
use crate::{check, files, layout, merge, prices, report, tables};
use duckboard::file::{JobFile, Salvage, schema};

/// Does the task.
pub(crate) fn run(office: Office) -> Result<(), Trouble> {
    match office.task {
        Task::Check { file } => check::check(&file),
        Task::Report { input, output, force } => {
            report::write(&opened(&input)?, &output.unwrap_or_else(|| report::folder_for(&input.file)), force)
        }
        Task::Layout { input, output, force } => {
            layout::write(&opened(&input)?, &output.unwrap_or_else(|| layout::folder_for(&input.file)), force)
        }
        Task::Readings { input } => files::print(&tables::readings_csv(opened(&input)?.file.book().job())),
        Task::Lengths { input } => files::print(&tables::lengths_csv(opened(&input)?.file.book().job())),
        Task::Orders { input } => files::print(&tables::orders_csv(&opened(&input)?.file.book())),
        Task::Prices { file, list, output, force } => prices::take_in(&file, &list, &output, force),
        Task::Merge { a, b, output, force } => merge::merge_files(&a, &b, &output, force),
        Task::Schema => files::print(&schema::text()),
    }
}

/// The file: without faults, or with them told if that was asked for.
fn opened(input: &Input) -> Result<Salvage, Trouble> {
    if !input.anyway {
        let file: JobFile = files::sound(&input.file)?;
        return Ok(Salvage { file, faults: Vec::new() });
    }
    let salvage = files::salvaged(&input.file)?;
    for fault in &salvage.faults {
        eprintln!("Passed over: {fault}");
    }
    Ok(salvage)
}
