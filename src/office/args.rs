//! What the command understands, and its help.

use clap::{Args, Parser, Subcommand};
use std::path::PathBuf;

/// Opens Duckboard job files at a desk: checks them, prints them, makes one of two.
///
/// Exit code 0: all is well. 1: a file has faults. 2: the command was not understood,
/// or a file could not be opened or written.
#[derive(Debug, Parser)]
#[command(name = "office", version)]
pub(crate) struct Office {
    #[command(subcommand)]
    pub(crate) task: Task,
}

/// What is to be done.
#[derive(Debug, Subcommand)]
pub(crate) enum Task {
    /// Say what a job file holds and everything that is wrong with it.
    ///
    /// Faults are damaged parts, two entries under one id, and entries that refer to
    /// something missing. Corrections that disagree and kinds of entries that this
    /// version does not know are told too, but are no faults.
    Check {
        /// The job file.
        file: PathBuf,
    },
    /// Write the job as a report (Markdown), with its photos in a folder beside it.
    Report {
        #[command(flatten)]
        input: Input,
        /// The folder to write to [default: the file's name and "-report", in the current folder].
        #[arg(short, long, value_name = "DIR")]
        output: Option<PathBuf>,
        /// Write over an earlier report in that folder.
        #[arg(long)]
        force: bool,
    },
    /// Lay sheets on the opening and write how each is cut (Markdown, drawings beside it).
    Layout {
        #[command(flatten)]
        input: Input,
        /// The folder to write to [default: the file's name and "-sheets", in the current folder].
        #[arg(short, long, value_name = "DIR")]
        output: Option<PathBuf>,
        /// Write over an earlier layout in that folder.
        #[arg(long)]
        force: bool,
    },
    /// Print the moisture readings as CSV, for a spreadsheet.
    Readings {
        #[command(flatten)]
        input: Input,
    },
    /// Print every measured length as CSV, for a spreadsheet.
    Lengths {
        #[command(flatten)]
        input: Input,
    },
    /// Print the order list as CSV: what is needed, what to order, what changed since the
    /// file was last sent.
    ///
    /// The column of prices is empty until the office fills it and hands it back with
    /// `prices`; nothing here is a price that somebody asks.
    Orders {
        #[command(flatten)]
        input: Input,
    },
    /// Take the prices of a filled order list into a new job file.
    ///
    /// They are entries like any other: they survive merging, and later lists show them.
    /// Rows are known by their item; a row without a price changes nothing.
    Prices {
        /// The job file.
        file: PathBuf,
        /// The list that `orders` printed, its prices filled in.
        list: PathBuf,
        /// The job file to write.
        #[arg(short, long, value_name = "C")]
        output: PathBuf,
        /// Write even over a file that exists.
        #[arg(long)]
        force: bool,
    },
    /// Make one job file of two of the same job.
    ///
    /// Nothing is lost and nothing is counted twice: the new file holds every entry and
    /// photo that either has. It does not matter which comes first.
    Merge {
        /// The one job file.
        a: PathBuf,
        /// The other job file.
        b: PathBuf,
        /// The job file to write.
        #[arg(short, long, value_name = "C")]
        output: PathBuf,
        /// Write even over a file that exists, or over one of the two.
        #[arg(long)]
        force: bool,
    },
    /// Print the job file format's JSON Schema (2020-12).
    Schema,
}

/// A job file to read.
#[derive(Debug, Args)]
pub(crate) struct Input {
    /// The job file.
    pub(crate) file: PathBuf,
    /// Go on with what can be read of a file that has faults; they are told.
    #[arg(long)]
    pub(crate) anyway: bool,
}
