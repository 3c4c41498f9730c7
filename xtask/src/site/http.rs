//! As much of HTTP/1.1 as a browser needs from a static host: one request and one
//! answer per connection.

use std::io::{self, Read, Write};
use std::net::TcpStream;
use std::sync::Arc;
use std::time::Duration;

/// More than any browser's request; a longer one is not a browser's.
const LONGEST_HEAD: usize = 32 * 1024;
/// A visitor that says nothing is not waited for.
const PATIENCE: Duration = Duration::from_secs(15);

/// What was asked.
#[derive(Debug, PartialEq, Eq)]
pub struct Request {
    pub method: String,
    pub target: String,
    pub accepts_brotli: bool,
}

/// What is answered.
#[derive(Debug)]
pub struct Answer {
    pub status: u16,
    pub body: Arc<[u8]>,
    headers: Vec<(&'static str, String)>,
}

impl Answer {
    pub fn new(status: u16, body: Arc<[u8]>) -> Self {
        Self { status, body, headers: Vec::new() }
    }

    pub fn plain(status: u16, words: &str) -> Self {
        Self::new(status, words.as_bytes().into()).with("Content-Type", "text/plain; charset=utf-8")
    }

    pub fn with(mut self, name: &'static str, value: &str) -> Self {
        self.headers.push((name, value.to_string()));
        self
    }

    #[cfg(test)]
    pub fn header(&self, wanted: &str) -> Option<&str> {
        self.headers.iter().find(|(name, _)| *name == wanted).map(|(_, value)| value.as_str())
    }

    fn head(&self) -> String {
        let mut head = format!("HTTP/1.1 {} {}\r\n", self.status, reason(self.status));
        for (name, value) in &self.headers {
            head += &format!("{name}: {value}\r\n");
        }
        head += &format!("Content-Length: {}\r\n", self.body.len());
        head + "X-Content-Type-Options: nosniff\r\nVary: Accept-Encoding\r\nConnection: close\r\n\r\n"
    }
}

fn reason(status: u16) -> &'static str {
    match status {
        200 => "OK",
        301 => "Moved Permanently",
        400 => "Bad Request",
        404 => "Not Found",
        405 => "Method Not Allowed",
        _ => "Unknown",
    }
}

/// Hears one request and answers it. A visitor who goes away in between is no error.
pub fn converse(mut stream: TcpStream, answer: impl Fn(&Request) -> Answer) {
    let _ = try_converse(&mut stream, answer);
}

fn try_converse(stream: &mut TcpStream, answer: impl Fn(&Request) -> Answer) -> io::Result<()> {
    stream.set_read_timeout(Some(PATIENCE))?;
    stream.set_write_timeout(Some(PATIENCE))?;
    let head = read_head(stream)?;
    if head.is_empty() {
        return Ok(());
    }
    let request = parse(&head);
    let answer = request.as_ref().map_or_else(|| Answer::plain(400, "not understood"), answer);
    stream.write_all(answer.head().as_bytes())?;
    if request.is_none_or(|request| request.method != "HEAD") {
        stream.write_all(&answer.body)?;
    }
    stream.flush()
}

fn read_head(stream: &mut impl Read) -> io::Result<String> {
    let mut head = Vec::new();
    let mut part = [0; 4096];
    while head.len() < LONGEST_HEAD && !head.windows(4).any(|end| end == b"\r\n\r\n") {
        match stream.read(&mut part)? {
            0 => break,
            count => head.extend(part.iter().take(count)),
        }
    }
    Ok(String::from_utf8_lossy(&head).into_owned())
}

/// The parts of a request that matter here; none if it is no HTTP/1 request.
fn parse(head: &str) -> Option<Request> {
    let (head, _) = head.split_once("\r\n\r\n")?;
    let mut lines = head.split("\r\n");
    let mut words = lines.next()?.split(' ');
    let (method, target, version) = (words.next()?, words.next()?, words.next()?);
    if words.next().is_some() || !version.starts_with("HTTP/1.") || !target.starts_with('/') {
        return None;
    }
    let accepts_brotli = lines.filter_map(|line| line.split_once(':')).any(|(name, value)| {
        name.eq_ignore_ascii_case("accept-encoding") && value.split(',').any(|coding| coding.trim() == "br")
    });
    Some(Request { method: method.into(), target: target.into(), accepts_brotli })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_browsers_request_is_read() {
        let head = "GET /a?b HTTP/1.1\r\nHost: x\r\naccept-encoding: gzip, br\r\n\r\n";
        let wanted = Request { method: "GET".into(), target: "/a?b".into(), accepts_brotli: true };
        assert_eq!(parse(head), Some(wanted));
        assert!(!parse("GET / HTTP/1.1\r\nAccept-Encoding: gzip, bro\r\n\r\n").unwrap().accepts_brotli);
    }

    #[test]
    fn what_is_no_request_is_refused() {
        for head in ["", "GET /\r\n\r\n", "GET / HTTP/2\r\n\r\n", "GET x HTTP/1.1\r\n\r\n", "GET / HTTP/1.1\r\nHost: x"]
        {
            assert_eq!(parse(head), None, "{head:?}");
        }
    }

    #[test]
    fn a_head_without_an_end_is_given_up() {
        let endless = vec![b'a'; 10 * LONGEST_HEAD];
        assert!(read_head(&mut &*endless).unwrap().len() < LONGEST_HEAD + 4096 + 1);
    }

    #[test]
    fn an_answer_states_its_length() {
        let head = Answer::plain(200, "four").head();
        assert!(head.starts_with("HTTP/1.1 200 OK\r\n") && head.contains("Content-Length: 4\r\n"));
        assert!(head.ends_with("\r\n\r\n"));
    }
}
