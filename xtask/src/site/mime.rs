//! What a file is, by the end of its name. A browser runs no script and streams no
//! module under a wrong type.

/// The type to send with a file of this name.
pub fn of(name: &str) -> &'static str {
    match name.rsplit_once('.').map_or("", |(_, extension)| extension) {
        "html" => "text/html; charset=utf-8",
        "js" => "text/javascript; charset=utf-8",
        "css" => "text/css; charset=utf-8",
        "wasm" => "application/wasm",
        "webmanifest" => "application/manifest+json",
        "json" => "application/json",
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "jpg" | "jpeg" => "image/jpeg",
        "webp" => "image/webp",
        "ico" => "image/x-icon",
        "woff2" => "font/woff2",
        "txt" => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

/// Is there anything left in it to compress?
pub fn shrinks(mime: &str) -> bool {
    mime.starts_with("text/") || mime.contains("json") || mime.contains("xml") || mime.contains("wasm")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn modules_scripts_and_manifest_have_the_types_browsers_insist_on() {
        assert_eq!(of("a_bg-0123.wasm"), "application/wasm");
        assert!(of("a.js").starts_with("text/javascript"));
        assert_eq!(of("manifest.webmanifest"), "application/manifest+json");
    }

    #[test]
    fn the_unknown_is_only_bytes() {
        for name in ["README", "a.xyz", "", "."] {
            assert_eq!(of(name), "application/octet-stream", "{name}");
        }
    }

    #[test]
    fn pictures_are_compressed_already() {
        assert!(!shrinks(of("a.png")) && !shrinks(of("a.woff2")));
        assert!(shrinks(of("a.svg")) && shrinks(of("a.wasm")) && shrinks(of("a.webmanifest")));
    }
}
