use std::io::Read as _;
use std::net::TcpListener;

use crate::bench::Bench;

const ANY_PORT: [&str; 2] = ["--address", "127.0.0.1:0"];

#[test]
fn the_address_told_is_the_one_it_listens_on() {
    let bench = Bench::new();
    let serving = bench.serve(&ANY_PORT);
    let address = serving.address();
    assert!(address.ip().is_loopback(), "{address}");
    assert_ne!(address.port(), 0, "{}", serving.told);
    assert_eq!(
        serving.told,
        format!("Open http://{address}/ in a browser; Ctrl-C stops it.\n")
    );
    let page = serving.get("/");
    assert!(page.starts_with("HTTP/1.1 200 "), "{page}");
    assert!(page.contains("The shop"), "{page}");
    assert!(!page.contains(demo::SHOP.name), "{page}");
}

#[test]
fn the_invented_shop_hangs_its_pieces_on_the_wall() {
    let bench = Bench::new();
    let serving = bench.serve(&[&ANY_PORT[..], &["--demo"]].concat());
    let page = serving.get("/");
    assert!(page.contains(demo::SHOP.name), "{page}");
    let job = &demo::JOBS[0];
    let piece = format!("/piece/{}", job.name);
    assert!(page.contains(&piece), "{piece} is not in\n{page}");
    assert!(serving.get(&piece).starts_with("HTTP/1.1 200 "), "{piece}");
}

#[test]
fn the_shops_name_and_habits_are_its_own() {
    let bench = Bench::new();
    bench.file("shop.toml", "\"mat.overlap\" = \"7/32\"\n");
    let mine = ["--shop-name", "Two Bevels", "--settings", "shop.toml"];
    let serving = bench.serve(&[&ANY_PORT[..], &mine].concat());
    let page = serving.get("/settings");
    assert!(
        page.contains("Two Bevels") && page.contains("7/32 in"),
        "{page}"
    );
}

#[cfg(unix)]
#[test]
fn asked_to_stop_it_ends_as_done() {
    let bench = Bench::new();
    let mut serving = bench.serve(&ANY_PORT);
    // Once it has answered, it hears what it is asked.
    assert!(serving.get("/").starts_with("HTTP/1.1 200 "));
    let asked = std::process::Command::new("kill")
        .args(["-TERM", &serving.child.id().to_string()])
        .status();
    assert!(asked.expect("it is asked").success());
    let done = serving.child.wait().expect("it ends");
    let mut rest = String::new();
    let read = serving.stderr.read_to_string(&mut rest);
    read.expect("what it told is text");
    assert_eq!((done.code(), rest.as_str()), (Some(0), ""));
}

#[test]
fn an_address_other_machines_can_reach_is_refused() {
    let bench = Bench::new();
    insta::assert_snapshot!(bench.run(&["serve", "--address", "0.0.0.0:7733"]));
    for open in ["[::]:7733", "192.0.2.1:7733", "[::ffff:127.0.0.1]:7733"] {
        let ran = bench.run(&["serve", "--address", open]);
        assert_eq!((ran.exit, ran.stdout.as_str()), (1, ""), "{ran}");
        assert!(ran.stderr.contains("code: serve.address"), "{ran}");
    }
}

#[test]
fn an_address_that_is_taken_is_told() {
    let bench = Bench::new();
    let holder = TcpListener::bind("127.0.0.1:0").expect("a free port");
    let taken = holder.local_addr().expect("its address").to_string();
    let ran = bench.run(&["serve", "--address", &taken]);
    assert_eq!((ran.exit, ran.stdout.as_str()), (3, ""), "{ran}");
    assert_eq!(
        ran.stderr,
        format!(
            "can't listen on {taken}: address already in use\n  \
             hint: name another port with --address, or stop the program that has this one\n  \
             code: serve.listen\n"
        )
    );
}

#[test]
fn what_is_no_address_is_answered_with_one() {
    let bench = Bench::new();
    for odd in ["localhost", "7733", "127.0.0.1", "127.0.0.1:99999"] {
        let ran = bench.run(&["serve", "--address", odd]);
        assert_eq!((ran.exit, ran.stdout.as_str()), (2, ""), "{ran}");
        assert!(ran.stderr.contains("127.0.0.1:7733"), "{ran}");
    }
}

#[test]
fn a_shop_that_cannot_be_used_is_told_before_it_listens() {
    let bench = Bench::new();
    bench.file("shop.toml", "\"mat.overlop\" = \"1/4\"\n");
    let args = ["serve", "--address", "127.0.0.1:0", "--settings"];
    let ran = bench.run(&[&args[..], &["shop.toml"]].concat());
    assert_eq!(ran.exit, 1, "{ran}");
    assert!(ran.stderr.contains("code: settings.refused"), "{ran}");
    assert!(!ran.stderr.contains("Open http"), "{ran}");
}
