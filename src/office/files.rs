//! Files in and out. A job file is never written over unasked, nor left half-written.

use crate::trouble::Trouble;
use duckboard::file::limits::FILE_BYTES;
use duckboard::file::{JobFile, Refusal, Salvage, read, salvage};
use std::fs::{self, File};
use std::io::{self, BufWriter, Write};
use std::path::{Path, PathBuf};

/// A job file without faults.
pub(crate) fn sound(path: &Path) -> Result<JobFile, Trouble> {
    read(&bytes(path)?).map_err(|refusal| Trouble::refused(path, refusal))
}

/// A job file, or what can be read of it.
pub(crate) fn salvaged(path: &Path) -> Result<Salvage, Trouble> {
    salvage(&bytes(path)?).map_err(|refusal| Trouble::refused(path, refusal))
}

fn bytes(path: &Path) -> Result<Vec<u8>, Trouble> {
    let unreadable = |error| Trouble::unreadable(path, error);
    let length = fs::metadata(path).map_err(unreadable)?.len();
    // Before it is loaded: the reader would refuse it after.
    match usize::try_from(length) {
        Ok(length) if length <= FILE_BYTES => fs::read(path).map_err(unreadable),
        too_long => {
            let bytes = too_long.unwrap_or(usize::MAX);
            Err(Trouble::refused(path, Refusal::TooLong { bytes, most: FILE_BYTES }))
        }
    }
}

/// Writes a file in parts, whole or not at all: under another name first, then renamed.
pub(crate) fn write_whole<P: AsRef<[u8]>>(path: &Path, parts: impl Iterator<Item = P>) -> Result<(), Trouble> {
    let unfinished = unfinished(path);
    let written = write_parts(&unfinished, parts).and_then(|()| fs::rename(&unfinished, path));
    written.map_err(|error| {
        // It may not even exist; the first error is the one to tell.
        let _ = fs::remove_file(&unfinished);
        Trouble::unwritable(path, error)
    })
}

fn write_parts<P: AsRef<[u8]>>(path: &Path, parts: impl Iterator<Item = P>) -> io::Result<()> {
    let mut file = BufWriter::new(File::create(path)?);
    for part in parts {
        file.write_all(part.as_ref())?;
    }
    file.into_inner().map_err(io::IntoInnerError::into_error)?.sync_all()
}

fn unfinished(path: &Path) -> PathBuf {
    let mut name = path.file_name().map(ToOwned::to_owned).unwrap_or_default();
    name.push(format!(".{}.unfinished", std::process::id()));
    path.with_file_name(name)
}

/// Prints text. A reader that has seen enough and closes the pipe is no trouble.
pub(crate) fn print(text: &str) -> Result<(), Trouble> {
    match io::stdout().lock().write_all(text.as_bytes()) {
        Err(error) if error.kind() != io::ErrorKind::BrokenPipe => {
            Err(Trouble::unwritable(Path::new("standard output"), error))
        }
        _ => Ok(()),
    }
}
