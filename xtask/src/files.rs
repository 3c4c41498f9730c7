//! A folder of files held in memory: what a build emits, before it is written.

use anyhow::{Context, Result};
use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

/// Contents by path, relative to the folder, with `/` between the names.
#[derive(Debug, Default, Clone, PartialEq, Eq)]
pub struct Files(pub BTreeMap<String, Vec<u8>>);

impl Files {
    /// Reads a folder and all below it. Dot files are the editor's and stay out.
    pub fn read(folder: &Path) -> Result<Self> {
        let mut files = Self::default();
        files.read_below(folder, "").with_context(|| format!("cannot read {}", folder.display()))?;
        Ok(files)
    }

    fn read_below(&mut self, folder: &Path, path: &str) -> Result<()> {
        for entry in fs::read_dir(folder)? {
            let entry = entry?;
            let name = entry.file_name().to_string_lossy().into_owned();
            let path = format!("{path}{name}");
            if name.starts_with('.') {
                continue;
            } else if entry.file_type()?.is_dir() {
                self.read_below(&entry.path(), &format!("{path}/"))?;
            } else {
                self.0.insert(path, fs::read(entry.path())?);
            }
        }
        Ok(())
    }

    /// Makes the folder hold exactly these files. What names others is written last,
    /// so that a server never hands out a page whose parts are not there yet.
    pub fn write(&self, folder: &Path) -> Result<()> {
        let (last, first): (Vec<_>, Vec<_>) = self.0.iter().partition(|(path, _)| names_others(path));
        for (path, content) in first.into_iter().chain(last) {
            let to = folder.join(path);
            fs::create_dir_all(to.parent().unwrap_or(folder))?;
            fs::write(&to, content).with_context(|| format!("cannot write {}", to.display()))?;
        }
        let old = Self::read(folder)?;
        for path in old.0.keys().filter(|path| !self.0.contains_key(*path)) {
            fs::remove_file(folder.join(path))?;
        }
        Ok(())
    }

    /// Adds other files; a path in both is a mistake.
    pub fn join(mut self, other: Self) -> Result<Self> {
        for (path, content) in other.0 {
            if self.0.contains_key(&path) {
                anyhow::bail!("two files want to be `{path}`");
            }
            self.0.insert(path, content);
        }
        Ok(self)
    }
}

fn names_others(path: &str) -> bool {
    matches!(path, "index.html" | "sw.js")
}

/// All files below a folder or the file itself, for looking at their times.
pub fn walk(path: &Path, found: &mut Vec<PathBuf>) {
    match fs::read_dir(path) {
        Ok(entries) => entries.flatten().for_each(|entry| walk(&entry.path(), found)),
        Err(_) => found.push(path.to_path_buf()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn files(paths: &[&str]) -> Files {
        Files(paths.iter().map(|path| ((*path).to_string(), path.as_bytes().to_vec())).collect())
    }

    #[test]
    fn writing_leaves_exactly_what_was_written() {
        let folder = std::env::temp_dir().join(format!("xtask-files-{}", std::process::id()));
        files(&["old.js", "kept.css", "deep/er/old.js"]).write(&folder).unwrap();
        let new = files(&["new.js", "kept.css", "deep/new.js", "index.html"]);
        new.write(&folder).unwrap();
        assert_eq!(Files::read(&folder).unwrap(), new);
        fs::remove_dir_all(folder).unwrap();
    }

    #[test]
    fn two_files_cannot_share_a_path() {
        assert!(files(&["a"]).join(files(&["b"])).is_ok());
        assert!(files(&["a"]).join(files(&["a"])).is_err());
    }
}
