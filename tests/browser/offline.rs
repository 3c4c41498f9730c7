//! Without a signal: what was loaded once starts again with nobody to ask, and a new
//! build waits until it is wanted.

use crate::builds;
use crate::harness::{Phone, Screen, Server, root};
use serde_json::json;

/// How often this tab has loaded a page.
const LOADS: &str = "sessionStorage.loads";

/// The app, wherever its host puts it, with the host gone and the browser killed.
async fn starts_without_host(prefix: &str) {
    let mut server = Server::start_with(&root().join("dist"), prefix).await;
    let mut phone = Phone::open(Screen::Tall, server.address()).await;
    phone.wait_until_started().await;
    phone.wait_until_kept().await;

    server.kill();
    phone.kill().await;
    phone.start_again(server.address()).await;
    phone.wait_until_started().await;
    phone.wait_until_kept().await;
    phone.finish().await;
}

#[tokio::test]
async fn the_app_starts_with_its_host_dead_and_after_the_browser_was_killed() {
    starts_without_host("").await;
}

#[tokio::test]
async fn the_app_starts_without_its_host_from_any_path() {
    starts_without_host("/some/where").await;
}

#[tokio::test]
async fn a_page_that_is_not_there_is_the_app_and_the_query_does_not_matter() {
    let mut server = Server::start().await;
    let mut phone = Phone::open(Screen::Small, server.address()).await;
    phone.wait_until_kept().await;
    server.kill();
    for path in ["?from=home", "#jobs", "index.html"] {
        phone.goto(&format!("{}{path}", server.address())).await;
        phone.wait_until_started().await;
        phone.wait_for("Duckboard").await;
    }
    phone.finish().await;
}

#[tokio::test]
async fn a_new_build_waits_until_it_is_wanted_and_then_reloads_once() {
    let mut server = Server::start().await;
    let mut phone = Phone::open(Screen::Tall, server.address()).await;
    let count = "sessionStorage.loads = 1 + Number(sessionStorage.loads ?? 0)";
    phone.command("Page.addScriptToEvaluateOnNewDocument", json!({ "source": count })).await;
    phone.reload().await;
    phone.wait_until_kept().await;
    phone.reads("how often a page was loaded", LOADS, "1").await;

    let second = builds::second();
    server.start_again(&second).await;
    phone.reload().await;
    phone.reads("the new build", "document.documentElement.dataset.update", "waiting").await;
    phone.reads("the title", "document.title", "Duckboard").await;
    phone.reads("how often a page was loaded", LOADS, "2").await;

    phone.act("the new build is wanted", "window.dispatchEvent(new Event('duckboard-use-update'))").await;
    phone.reads("the new build's title", "document.title", builds::SECOND_TITLE).await;
    phone.wait_until_started().await;
    phone.wait_until_kept().await;
    phone.reads("how often a page was loaded", LOADS, "3").await;
    phone.wait_until("no new build waits", "document.documentElement.dataset.update === undefined").await;
    phone.reads("how many builds are kept", "caches.keys().then(names => names.length)", 1).await;
    phone.finish().await;
    std::fs::remove_dir_all(second).unwrap();
}

#[tokio::test]
async fn a_build_with_a_foreign_file_in_it_is_never_used() {
    let mut server = Server::start().await;
    let mut phone = Phone::open(Screen::Tall, server.address()).await;
    phone.wait_until_kept().await;

    // The new worker arrives while the host still has a page of another build.
    let second = builds::second();
    std::fs::copy(root().join("dist/index.html"), second.join("index.html")).unwrap();
    server.start_again(&second).await;
    let update = "navigator.serviceWorker.getRegistration().then(async registration => {
        await registration.update();
        const worker = registration.installing ?? registration.waiting;
        if (worker.state === 'installing') await new Promise(done => worker.onstatechange = done);
        return worker.state;
    })";
    // Whatever it comes to at first is what counts.
    let state = phone.read::<String>("the new worker is kept or not", update, |_| true).await;
    assert_eq!(state, "redundant");
    server.kill();
    phone.reload().await;
    phone.wait_until_started().await;
    phone.finish_despite_errors().await;
    std::fs::remove_dir_all(second).unwrap();
}

#[tokio::test]
async fn an_app_that_cannot_start_says_what_to_do_and_that_the_saved_is_safe() {
    let broken = builds::broken();
    let server = Server::start_with(&broken, "").await;
    let mut phone = Phone::open(Screen::Small, server.address()).await;
    phone.wait_for("Duckboard did not start").await;
    phone.wait_for("Everything that was marked saved is safe on this phone.").await;
    phone.reads("whether it is kept", "document.documentElement.dataset.offline", "failed").await;
    phone.check_accessible().await;
    phone.wait_for_a_console_error().await;
    phone.finish_despite_errors().await;
    std::fs::remove_dir_all(broken).unwrap();
}
