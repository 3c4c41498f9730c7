//! The command line: which command, with which options.

use anyhow::{Result, bail};
use lexopt::prelude::*;
use std::path::PathBuf;

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
  dist              build the files to put on a host, into dist/
  size              what a first visit downloads, against its budget
  bench             proofs of the layout cases natively and in Chromium, first-load
                    bytes, Lighthouse's scores
";

/// One command with its options.
#[derive(Debug, PartialEq, Eq)]
pub enum Command {
    Help,
    Dist,
    Serve(ServeOptions),
    Size,
    Test { only: Only },
    Bench,
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
    match name.as_str() {
        "serve" => serve_options(words).map(Command::Serve),
        "test" => steps(words).map(|only| Command::Test { only }),
        "help" => Ok(Command::Help),
        "dist" => nothing_more(words, Command::Dist),
        "size" => nothing_more(words, Command::Size),
        "bench" => nothing_more(words, Command::Bench),
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

/// `a/b`, `/a/b` and `/a/b/` all mean `/a/b`.
fn prefix(text: &str) -> String {
    match text.trim_matches('/') {
        "" => String::new(),
        path => format!("/{path}"),
    }
}

fn steps(mut words: lexopt::Parser) -> Result<Only> {
    let mut names = Vec::new();
    while let Some(word) = words.next()? {
        match word {
            Long("list") => return Ok(Only::List),
            Value(name) => names.push(name.string()?),
            other => return Err(other.unexpected().into()),
        }
    }
    Ok(if names.is_empty() { Only::All } else { Only::Named(names) })
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
    fn without_words_it_helps() {
        assert_eq!(parsed(&[]).unwrap(), Command::Help);
        assert_eq!(parsed(&["--help"]).unwrap(), Command::Help);
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
    fn unknown_words_are_refused() {
        for words in [&["sevre"][..], &["dist", "now"], &["serve", "--prot", "1"]] {
            assert!(parsed(words).is_err(), "{words:?}");
        }
    }

    #[test]
    fn test_without_names_runs_everything() {
        assert_eq!(parsed(&["test"]).unwrap(), Command::Test { only: Only::All });
        let only = Only::Named(vec!["fmt".into(), "size".into()]);
        assert_eq!(parsed(&["test", "fmt", "size"]).unwrap(), Command::Test { only });
    }
}
