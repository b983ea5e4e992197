//! The habits of the command line: completions, manual pages, where errors go, what it ends with, and
//! colour on a terminal alone.

use std::io::Write as _;
use std::process::{Command, Output, Stdio};

fn barwright(arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_barwright"))
        .args(arguments)
        .env("LC_ALL", "en_GB.UTF-8")
        .env("TERM", "xterm-256color")
        .env_remove("NO_COLOR")
        .output()
        .expect("the program starts")
}

fn printed(arguments: &[&str]) -> String {
    let output = barwright(arguments);
    assert_eq!(output.status.code(), Some(0), "{output:?}");
    assert!(output.stderr.is_empty(), "{output:?}");
    String::from_utf8(output.stdout).expect("text")
}

#[test]
fn each_shell_gets_completions_that_know_every_command() {
    for shell in ["bash", "zsh", "fish"] {
        let text = printed(&["completions", shell]);
        for word in ["rehearse", "estimate", "hold-to", "recover", "describe"] {
            assert!(text.contains(word), "{shell}: {word}");
        }
    }
    assert_eq!(barwright(&["completions", "abacus"]).status.code(), Some(2));
}

/// Bash itself completes by them, where it is at hand.
#[test]
fn bash_completes_a_command() {
    let asked = "COMP_WORDS=(barwright reh); COMP_CWORD=1; _barwright barwright reh barwright; \
                 printf '%s\\n' \"${COMPREPLY[@]}\"";
    let script = format!("{}\n{asked}\n", printed(&["completions", "bash"]));
    let started = Command::new("bash").stdin(Stdio::piped()).stdout(Stdio::piped()).spawn();
    let Ok(mut bash) = started else { return };
    bash.stdin.take().expect("it is piped").write_all(script.as_bytes()).expect("bash reads");
    let output = bash.wait_with_output().expect("bash ends");
    assert_eq!(String::from_utf8_lossy(&output.stdout), "rehearse\n");
}

#[test]
fn the_manual_is_made_from_the_same_definitions() {
    let page = printed(&["man"]);
    assert!(page.contains(".TH barwright 1"), "{page}");
    // Its commands, its options, and what it ends with.
    for part in ["rehearse", "\\-\\-store", "standard error", "NO_COLOR"] {
        assert!(page.contains(part), "{part:?} is missing in\n{page}");
    }
    let check = printed(&["man", "plan", "check"]);
    assert!(
        check.contains(".TH barwright\\-plan\\-check 1")
            || check.contains(".TH barwright-plan-check 1"),
        "{check}"
    );
    assert!(check.contains("winter.toml") && check.contains("hold\\-to"), "{check}");
    let none = barwright(&["man", "plan", "burn"]);
    assert_eq!(none.status.code(), Some(2));
    assert!(none.stdout.is_empty() && !none.stderr.is_empty(), "{none:?}");
}

#[test]
fn help_names_what_it_ends_with() {
    let help = printed(&["--help"]);
    for line in ["  0  done", "  1  something failed here", "  2  what was asked can't be", "  3  "]
    {
        assert!(help.contains(line), "{line:?} is missing in\n{help}");
    }
    for command in [&["load", "--help"][..], &["plan", "check", "--help"], &["records", "--help"]] {
        assert!(printed(command).contains("Example"), "{command:?}");
    }
}

#[test]
fn errors_go_to_standard_error_with_their_codes() {
    let folder = tempfile::tempdir().expect("a folder for the test");
    let at = |name: &str| folder.path().join(name).display().to_string();
    let plan = at("plan.toml");
    std::fs::write(&plan, "name = \"A\"\nweks = 1\n").expect("the folder can be written");
    let (store, none) = (at("records.db"), at("none.toml"));
    for (arguments, code) in [
        (&["nonsense"][..], 2),
        (&["load"], 2),
        (&["load", "heavy"], 2),
        (&["estimate", "100kg", "40"], 2),
        (&["plan", "check", &plan], 2),
        (&["plan", "show", &plan], 2),
        (&["plan", "adopt", &plan, "--store", &store], 2),
        (&["rehearse", &plan], 2),
        (&["today", "--store", &at("no.db")], 2),
        (&["plan", "check", &none], 1),
        (&["load", "60kg", "--equipment", &none], 1),
    ] {
        let output = barwright(arguments);
        assert_eq!(output.status.code(), Some(code), "{arguments:?}: {output:?}");
        assert!(output.stdout.is_empty(), "{arguments:?}: {output:?}");
        assert!(!output.stderr.is_empty(), "{arguments:?}: {output:?}");
        // Neither is a terminal: no colour.
        assert!(!output.stderr.contains(&0x1b), "{arguments:?}: {output:?}");
    }
}

#[test]
fn a_pipe_is_given_no_colour() {
    for arguments in [&["--help"][..], &["load", "142.5kg"], &["changes", "40kg", "80kg", "100kg"]]
    {
        assert!(!printed(arguments).contains('\x1b'), "{arguments:?}");
    }
}
