//! The store's contract, kept by the browser's own database: the laws that the memory
//! store keeps natively, faults that only a browser has, and SIGKILL.

use crate::harness::{Phone, Screen, Server, target};
use std::time::Duration;

/// The page titles itself when it is done; every law may wait out a database that hangs.
const PATIENCE: Duration = Duration::from_secs(120);

async fn contract_page() -> Server {
    let page = target().join("contract");
    assert!(page.join("index.html").is_file(), "the page is not built: run `cargo xtask test store-page` first");
    Server::start_with(&page, "").await
}

async fn phone_at(address: &str) -> Phone {
    let mut phone = Phone::open(Screen::Tall, address).await;
    phone.patience = PATIENCE;
    phone
}

async fn outcome(phone: &mut Phone) -> String {
    phone.read("the page is done", "document.title", |title: &String| !["", "loading"].contains(&title.as_str())).await
}

#[tokio::test]
async fn the_browsers_database_keeps_the_contract() {
    let server = contract_page().await;
    let mut phone = phone_at(server.address()).await;
    let outcome = outcome(&mut phone).await;
    let laws = phone.read::<String>("the laws", "document.body.innerText", |_| true).await;
    assert_eq!(outcome, "contract passed", "{laws}");
    assert!(laws.lines().filter(|line| line.starts_with("pass: ")).count() > 10, "{laws}");
    phone.finish().await;
}

#[tokio::test]
async fn what_was_called_safe_outlives_sigkill() {
    let server = contract_page().await;
    let (write, read) = (format!("{}#write", server.address()), format!("{}#read", server.address()));
    let mut phone = phone_at(&write).await;
    assert_eq!(outcome(&mut phone).await, "written");
    phone.kill().await;
    phone.start_again(&read).await;
    assert_eq!(outcome(&mut phone).await, "kept");
    phone.finish().await;
}

#[tokio::test]
async fn a_database_that_was_never_written_is_told_from_a_kept_one() {
    let server = contract_page().await;
    let mut phone = phone_at(&format!("{}#read", server.address())).await;
    assert_eq!(outcome(&mut phone).await, "lost: a line");
    phone.finish().await;
}
