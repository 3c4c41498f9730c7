//! The command line: which command, with which options.

use anyhow::{Result, anyhow, bail};
use lexopt::prelude::*;
use std::path::PathBuf;
use std::time::Duration;

/// What `cargo xtask help` prints.
pub const HELP: &str = "\
cargo xtask <command>

  serve             build the app and serve it on this machine
    --port N          the port; 0 picks a free one (default 8080, or a free one)
    --watch           build again whenever a source file changes
    --no-build        serve what is already built
    --dir PATH        serve this folder (default dist)
    --prefix /a/b     serve it under this path
    --compress        send brotli to browsers that accept it, as a good host does
  test [STEP ...]   everything that must hold before a change goes in;
                    with names, only those steps (`cargo xtask test --list`)
    --times N         so many times in a row, up to the first that fails
  dist              build the files to put on a host, into dist/
  size              what a first visit downloads, against its budget
  mutants           changes decisive lines of the engine one by one: does a test fail?
                    goes on where the last run stopped (tests/mutants/verdicts.txt)
    --piece NAME      only closing, framing, moisture or sample
    --only TEXT       only those whose name contains it, such as a file's
    --for 20m         stop after that time (s, m or h)
    --jobs N          so many at once, each in a copy of its own (default 1)
    --again           judge those that were missed anew: tests were added
    --report          judge none; fail if too few are caught or one has no reason
  bench             proofs of the layout cases and large rooms natively and in Chromium,
                    first-load bytes, Lighthouse's scores
    --layouts       only those proofs and rooms
";

/// One command with its options.
#[derive(Debug, PartialEq, Eq)]
pub enum Command {
    Help,
    Dist,
    Serve(ServeOptions),
    Size,
    Test { only: Only, times: usize },
    Bench { only_layouts: bool },
    Mutants(MutantsOptions),
}

/// Which steps of the test to run.
#[derive(Debug, PartialEq, Eq)]
pub enum Only {
    All,
    Named(Vec<String>),
    /// Run none, print their names.
    List,
}

/// How to serve.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ServeOptions {
    /// `None`: the usual port, or a free one when that is taken.
    pub port: Option<u16>,
    pub watch: bool,
    pub no_build: bool,
    /// `None`: the built app.
    pub dir: Option<PathBuf>,
    /// Empty, or `/a/b` without a slash at the end.
    pub prefix: String,
    pub compress: bool,
}

/// Which mutants to judge, and for how long.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MutantsOptions {
    /// `None`: all pieces.
    pub piece: Option<String>,
    /// A part of the names of those that are judged.
    pub only: Option<String>,
    /// `None`: until all are judged.
    pub time: Option<Duration>,
    pub jobs: usize,
    /// Judge those anew that were missed.
    pub again: bool,
    /// Judge none.
    pub only_report: bool,
}

impl Default for MutantsOptions {
    fn default() -> Self {
        Self { piece: None, only: None, time: None, jobs: 1, again: false, only_report: false }
    }
}

/// Reads the command line of this process.
pub fn from_command_line() -> Result<Command> {
    parse(lexopt::Parser::from_env())
}

fn parse(mut words: lexopt::Parser) -> Result<Command> {
    let Some(first) = words.next()? else {
        return Ok(Command::Help);
    };
    let name = match first {
        Value(name) => name.string()?,
        Long("help") | Short('h') => return Ok(Command::Help),
        other => return Err(other.unexpected().into()),
    };
    if words.clone().raw_args()?.any(|word| word == "--help" || word == "-h") {
        return Ok(Command::Help);
    }
    match name.as_str() {
        "serve" => serve_options(words).map(Command::Serve),
        "test" => steps(words).map(|(only, times)| Command::Test { only, times }),
        "help" => Ok(Command::Help),
        "dist" => nothing_more(words, Command::Dist),
        "size" => nothing_more(words, Command::Size),
        "bench" => bench_options(words),
        "mutants" => mutants_options(words).map(Command::Mutants),
        _ => bail!("there is no command `{name}`\n\n{HELP}"),
    }
}

fn serve_options(mut words: lexopt::Parser) -> Result<ServeOptions> {
    let mut options = ServeOptions::default();
    while let Some(word) = words.next()? {
        match word {
            Long("port") => options.port = Some(words.value()?.parse()?),
            Long("watch") => options.watch = true,
            Long("no-build") => options.no_build = true,
            Long("dir") => options.dir = Some(words.value()?.into()),
            Long("prefix") => options.prefix = prefix(&words.value()?.string()?),
            Long("compress") => options.compress = true,
            other => return Err(other.unexpected().into()),
        }
    }
    Ok(options)
}

fn mutants_options(mut words: lexopt::Parser) -> Result<MutantsOptions> {
    let mut options = MutantsOptions::default();
    while let Some(word) = words.next()? {
        match word {
            Long("piece") => options.piece = Some(words.value()?.string()?),
            Long("only") => options.only = Some(words.value()?.string()?),
            Long("for") => options.time = Some(time(&words.value()?.string()?)?),
            Long("jobs") => options.jobs = words.value()?.parse()?,
            Long("again") => options.again = true,
            Long("report") => options.only_report = true,
            other => return Err(other.unexpected().into()),
        }
    }
    Ok(options)
}

/// `90s`, `20m` or `2h`.
fn time(text: &str) -> Result<Duration> {
    let seconds = || {
        let (number, unit) = text.split_at_checked(text.len().checked_sub(1)?)?;
        let seconds = match unit {
            "s" => 1,
            "m" => 60,
            "h" => 3600,
            _ => return None,
        };
        number.parse::<u64>().ok()?.checked_mul(seconds)
    };
    seconds().map(Duration::from_secs).ok_or_else(|| anyhow!("`{text}` is no time: 90s, 20m and 2h are"))
}

/// `a/b`, `/a/b` and `/a/b/` all mean `/a/b`.
fn prefix(text: &str) -> String {
    match text.trim_matches('/') {
        "" => String::new(),
        path => format!("/{path}"),
    }
}

fn steps(mut words: lexopt::Parser) -> Result<(Only, usize)> {
    let (mut names, mut times) = (Vec::new(), 1);
    while let Some(word) = words.next()? {
        match word {
            Long("list") => return Ok((Only::List, 1)),
            Long("times") => times = words.value()?.parse()?,
            Value(name) => names.push(name.string()?),
            other => return Err(other.unexpected().into()),
        }
    }
    Ok((if names.is_empty() { Only::All } else { Only::Named(names) }, times))
}

fn bench_options(mut words: lexopt::Parser) -> Result<Command> {
    match words.next()? {
        None => Ok(Command::Bench { only_layouts: false }),
        Some(Long("layouts")) => nothing_more(words, Command::Bench { only_layouts: true }),
        Some(word) => Err(word.unexpected().into()),
    }
}

fn nothing_more(mut words: lexopt::Parser, command: Command) -> Result<Command> {
    match words.next()? {
        None => Ok(command),
        Some(word) => Err(word.unexpected().into()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn parsed(words: &[&str]) -> Result<Command> {
        parse(lexopt::Parser::from_args(words))
    }

    #[test]
    fn without_words_and_when_it_is_asked_it_helps() {
        assert_eq!(parsed(&[]).unwrap(), Command::Help);
        for words in [&["--help"][..], &["mutants", "--help"], &["serve", "--port", "0", "-h"]] {
            assert_eq!(parsed(words).unwrap(), Command::Help, "{words:?}");
        }
    }

    #[test]
    fn serve_takes_its_options_in_any_order() {
        let wanted = ServeOptions { port: Some(0), watch: true, prefix: "/sub/path".into(), ..ServeOptions::default() };
        for words in [
            ["serve", "--port", "0", "--watch", "--prefix", "/sub/path/"],
            ["serve", "--prefix=sub/path", "--watch", "--port=0", "--port", "0"],
        ] {
            assert_eq!(parsed(&words).unwrap(), Command::Serve(wanted.clone()));
        }
    }

    #[test]
    fn mutants_are_judged_for_a_time_in_words() {
        let words = ["mutants", "--piece", "closing", "--for", "20m", "--jobs", "2", "--again"];
        let wanted = MutantsOptions {
            piece: Some("closing".into()),
            time: Some(Duration::from_secs(1200)),
            jobs: 2,
            again: true,
            ..MutantsOptions::default()
        };
        assert_eq!(parsed(&words).unwrap(), Command::Mutants(wanted));
        assert_eq!(time("90s").unwrap(), Duration::from_secs(90));
        assert_eq!(time("2h").unwrap(), Duration::from_secs(7200));
        for text in ["", "m", "20", "1.5h", "20 min", "-3m"] {
            assert!(time(text).unwrap_err().to_string().contains(&format!("`{text}`")), "{text}");
        }
    }

    #[test]
    fn unknown_words_are_refused() {
        for words in [&["sevre"][..], &["dist", "now"], &["serve", "--prot", "1"], &["mutants", "closing"]] {
            assert!(parsed(words).is_err(), "{words:?}");
        }
    }

    #[test]
    fn test_without_names_runs_everything() {
        assert_eq!(parsed(&["test"]).unwrap(), Command::Test { only: Only::All, times: 1 });
        let only = Only::Named(vec!["fmt".into(), "size".into()]);
        assert_eq!(parsed(&["test", "fmt", "size"]).unwrap(), Command::Test { only, times: 1 });
        let only = Only::Named(vec!["browser".into()]);
        assert_eq!(parsed(&["test", "browser", "--times", "10"]).unwrap(), Command::Test { only, times: 10 });
    }
}
