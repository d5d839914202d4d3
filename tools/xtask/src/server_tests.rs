//! Tests of the server, from outside. They stand apart because the browser tests include
//! `server.rs` as a part of themselves.

use std::io::{Read, Write};
use std::net::{Ipv4Addr, TcpStream};
use std::sync::{Arc, Mutex};

use crate::server::{Habits, Server, Site};

/// A folder with three files, gone when dropped.
struct Folder(std::path::PathBuf);

impl Folder {
    fn new(name: &str) -> Folder {
        let folder = std::env::temp_dir().join(format!("xtask-{name}-{}", std::process::id()));
        std::fs::create_dir_all(&folder).unwrap();
        for file in ["index.html", "sw.js", "app-0123456789ab.wasm"] {
            std::fs::write(folder.join(file), file).unwrap();
        }
        Folder(folder)
    }

    fn site(&self, prefix: &str) -> Site {
        Site {
            folder: self.0.clone(),
            prefix: prefix.into(),
            instead: vec![("sw.js".into(), b"another".to_vec())],
            habits: Habits::default(),
        }
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        let _ = std::fs::remove_dir_all(&self.0);
    }
}

fn ask(server: &Server, first_line: &str) -> String {
    let mut stream = TcpStream::connect((Ipv4Addr::LOCALHOST, server.port)).unwrap();
    write!(stream, "{first_line}\r\nHost: here\r\n\r\n").unwrap();
    let mut answer = String::new();
    stream.read_to_string(&mut answer).unwrap();
    answer
}

#[test]
fn files_come_with_their_kind_and_with_how_long_they_keep() {
    let folder = Folder::new("kinds");
    let server = Server::start(folder.site("/"), 0, |_| ()).unwrap();
    let page = ask(&server, "GET / HTTP/1.1");
    assert!(page.starts_with("HTTP/1.1 200 OK\r\n"), "{page}");
    assert!(
        page.contains("Content-Type: text/html; charset=utf-8\r\n"),
        "{page}"
    );
    assert!(page.contains("Cache-Control: no-cache\r\n"), "{page}");
    assert!(page.ends_with("\r\n\r\nindex.html"), "{page}");
    let module = ask(&server, "GET /app-0123456789ab.wasm?x HTTP/1.1");
    assert!(
        module.contains("Content-Type: application/wasm\r\n"),
        "{module}"
    );
    assert!(module.contains("immutable\r\n"), "{module}");
}

#[test]
fn a_file_can_be_replaced() {
    let folder = Folder::new("instead");
    let server = Server::start(folder.site("/"), 0, |_| ()).unwrap();
    assert!(ask(&server, "GET /sw.js HTTP/1.1").ends_with("\r\n\r\nanother"));
}

#[test]
fn nothing_outside_the_folder_is_handed_out() {
    let folder = Folder::new("outside");
    let server = Server::start(folder.site("/duty/"), 0, |_| ()).unwrap();
    let name = folder.0.file_name().unwrap().to_str().unwrap();
    for path in [
        "/index.html".to_owned(),
        "/duty/../index.html".to_owned(),
        format!("/duty/../{name}/index.html"),
        format!("/duty/..%2f{name}%2findex.html"),
        "/duty//etc/passwd".to_owned(),
        "/duty/nothing".to_owned(),
    ] {
        let answer = ask(&server, &format!("GET {path} HTTP/1.1"));
        assert!(answer.starts_with("HTTP/1.1 404 "), "{path}: {answer}");
    }
    assert!(ask(&server, "GET /duty/index.html HTTP/1.1").starts_with("HTTP/1.1 200 "));
    assert!(ask(&server, "POST /duty/ HTTP/1.1").starts_with("HTTP/1.1 405 "));
}

#[test]
fn requests_are_told_and_a_stopped_server_refuses() {
    let folder = Folder::new("stop");
    let seen = Arc::new(Mutex::new(Vec::new()));
    let watch = {
        let seen = seen.clone();
        move |path: &str| seen.lock().unwrap().push(path.to_owned())
    };
    let server = Server::start(folder.site("/"), 0, watch).unwrap();
    ask(&server, "GET /a?b HTTP/1.1");
    assert_eq!(*seen.lock().unwrap(), ["/a?b"]);
    let port = server.port;
    drop(server);
    assert!(TcpStream::connect((Ipv4Addr::LOCALHOST, port)).is_err());
}

#[test]
fn a_connection_opened_ahead_of_need_is_not_answered_once_the_server_ends() {
    let folder = Folder::new("spare");
    let server = Server::start(folder.site("/"), 0, |_| ()).unwrap();
    let mut spare = TcpStream::connect((Ipv4Addr::LOCALHOST, server.port)).unwrap();
    // Connections are taken in their order, so the spare one stands once this is answered.
    ask(&server, "GET / HTTP/1.1");
    drop(server);
    let mut answer = Vec::new();
    let _ = write!(spare, "GET / HTTP/1.1\r\nHost: here\r\n\r\n");
    let _ = spare.read_to_end(&mut answer);
    assert_eq!(String::from_utf8_lossy(&answer), "");
}
