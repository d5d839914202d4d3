//! The two ways of talking to a browser.

use std::io::{BufRead, BufReader, Read, Write};
use std::net::{Ipv4Addr, TcpStream};
use std::time::{Duration, Instant};

use serde_json::{json, Value};

use super::command::Command;

/// An answer that does not come within this time never does.
const LONGEST: Duration = Duration::from_secs(60);

/// A session with a browser.
pub enum Wire {
    /// WebDriver over HTTP.
    Http { port: u16, session: String },
    /// Marionette over one socket.
    Marionette {
        socket: BufReader<TcpStream>,
        count: u64,
    },
}

impl Wire {
    /// Begins a session with a driver that listens on this port.
    pub fn http(port: u16, wishes: &Value) -> Result<Wire, String> {
        let body = json!({ "capabilities": { "alwaysMatch": wishes } });
        let answer = http("POST", port, "/session", &body)?;
        match answer["sessionId"].as_str() {
            Some(session) => Ok(Wire::Http {
                port,
                session: session.to_owned(),
            }),
            None => Err(format!("no session: {answer}")),
        }
    }

    /// Begins a session with a Firefox that listens on this port.
    pub fn marionette(port: u16) -> Result<Wire, String> {
        let stream = TcpStream::connect((Ipv4Addr::LOCALHOST, port)).map_err(text)?;
        stream.set_read_timeout(Some(LONGEST)).map_err(text)?;
        let mut wire = Wire::Marionette {
            socket: BufReader::new(stream),
            count: 0,
        };
        if let Wire::Marionette { socket, .. } = &mut wire {
            packet(socket)?;
        }
        wire.marionette_ask("WebDriver:NewSession", &json!({}))?;
        Ok(wire)
    }

    /// Asks and waits for the answer.
    pub fn ask(&mut self, command: &Command) -> Result<Value, String> {
        match self {
            Wire::Http { port, session } => {
                let (method, path, body) = command.over_http();
                http(method, *port, &format!("/session/{session}/{path}"), &body)
            }
            Wire::Marionette { .. } => {
                let (name, parameters) = command.over_marionette();
                let answer = self.marionette_ask(name, &parameters)?;
                // Some answers come wrapped, some bare.
                Ok(match answer {
                    Value::Object(mut fields)
                        if fields.len() == 1 && fields.contains_key("value") =>
                    {
                        fields.remove("value").unwrap_or_default()
                    }
                    other => other,
                })
            }
        }
    }

    fn marionette_ask(&mut self, name: &str, parameters: &Value) -> Result<Value, String> {
        let Wire::Marionette { socket, count } = self else {
            return Err("this is no Firefox".into());
        };
        *count += 1;
        let message = json!([0, *count, name, parameters]).to_string();
        write!(socket.get_mut(), "{}:{message}", message.len()).map_err(text)?;
        loop {
            let mut answer = packet(socket)?;
            if answer[1] != *count {
                continue;
            }
            return match answer[2].take() {
                Value::Null => Ok(answer[3].take()),
                trouble => Err(trouble["message"]
                    .as_str()
                    .unwrap_or("no reason given")
                    .to_owned()),
            };
        }
    }
}

/// One message of Marionette: its length in bytes, a colon, JSON.
fn packet(socket: &mut BufReader<TcpStream>) -> Result<Value, String> {
    let mut length = Vec::new();
    socket.read_until(b':', &mut length).map_err(text)?;
    length.pop();
    let length: usize = String::from_utf8_lossy(&length)
        .parse()
        .map_err(|_| "the connection broke".to_owned())?;
    let mut body = vec![0; length];
    socket.read_exact(&mut body).map_err(text)?;
    serde_json::from_slice(&body).map_err(text)
}

/// One request of WebDriver; gives the `value` of the answer.
fn http(method: &str, port: u16, path: &str, body: &Value) -> Result<Value, String> {
    let mut stream = TcpStream::connect((Ipv4Addr::LOCALHOST, port)).map_err(text)?;
    stream.set_read_timeout(Some(LONGEST)).map_err(text)?;
    let body = if body.is_null() {
        String::new()
    } else {
        body.to_string()
    };
    let request = format!(
        "{method} {path} HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\nContent-Type: application/json\r\n\
         Content-Length: {}\r\nConnection: close\r\n\r\n{body}",
        body.len()
    );
    stream.write_all(request.as_bytes()).map_err(text)?;
    let mut answer = BufReader::new(stream);
    let mut length = None;
    let mut line = String::new();
    loop {
        line.clear();
        if answer.read_line(&mut line).map_err(text)? == 0 || line == "\r\n" {
            break;
        }
        if let Some((key, value)) = line.split_once(':') {
            if key.eq_ignore_ascii_case("content-length") {
                length = value.trim().parse().ok();
            }
        }
    }
    let mut bytes = vec![0; length.ok_or("the driver hung up")?];
    answer.read_exact(&mut bytes).map_err(text)?;
    let mut answer: Value = serde_json::from_slice(&bytes).map_err(text)?;
    let value = answer["value"].take();
    match value["error"].as_str() {
        Some(kind) => Err(format!(
            "{kind}: {}",
            value["message"].as_str().unwrap_or_default()
        )),
        None => Ok(value),
    }
}

/// Tries until it works or the time is over.
pub fn insist<T>(
    longest: Duration,
    mut attempt: impl FnMut() -> Result<T, String>,
) -> Result<T, String> {
    let begun = Instant::now();
    loop {
        match attempt() {
            Err(_) if begun.elapsed() < longest => std::thread::sleep(Duration::from_millis(20)),
            done => return done,
        }
    }
}

fn text(trouble: impl std::fmt::Display) -> String {
    trouble.to_string()
}
