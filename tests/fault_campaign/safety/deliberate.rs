//! Breaks the source on purpose, one fault at a time in a copy of the tree, and wants the fault's own test to catch it.

use super::{Edit, Fault, hazards};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};
use std::sync::Mutex;

/// How many copies are broken at a time.
const WORKERS: usize = 2;

/// A copy of the tree, with a target directory of its own: what a fault does not touch is built once.
struct Copy {
    root: PathBuf,
}

impl Copy {
    fn new(number: usize) -> Self {
        let from = Path::new(env!("CARGO_MANIFEST_DIR"));
        let root = from.join(format!("target/deliberate-faults/{number}"));
        fs::create_dir_all(&root).unwrap();
        for name in ["Cargo.lock", "README.md", "src", "tests"] {
            let _ = fs::remove_dir_all(root.join(name));
            let done = Command::new("cp").arg("-r").arg(from.join(name)).arg(&root).status().unwrap();
            assert!(done.success(), "{name}");
        }
        // Without what only other tests are linked with.
        let manifest = fs::read_to_string(from.join("Cargo.toml")).unwrap();
        let (before, after) = manifest.split_once("[dev-dependencies]").expect("a section of dev-dependencies");
        let (_, after) = after.split_once("[lints.rust]").expect("a section of lints");
        fs::write(root.join("Cargo.toml"), format!("{before}[lints.rust]{after}")).unwrap();
        Self { root }
    }

    fn tests(&self, arguments: &[&str]) -> Output {
        let cargo = std::env::var_os("CARGO").unwrap_or("cargo".into());
        let mut command = Command::new(cargo);
        command.current_dir(&self.root).env("CARGO_TARGET_DIR", self.root.join("target")).env("RUST_BACKTRACE", "0");
        command
            .args(["test", "--quiet", "--offline", "--features", "capi", "--test", "fault_campaign"])
            .args(arguments);
        command.output().unwrap()
    }

    /// What was not as it should be.
    fn tries(&self, fault: &Fault) -> Option<String> {
        let path = |edit: &Edit| self.root.join("src").join(edit.file).with_extension("rs");
        let sound: Vec<(PathBuf, String)> =
            fault.edits.iter().map(path).map(|path| (path.clone(), fs::read_to_string(path).unwrap())).collect();
        for edit in &fault.edits {
            let source = fs::read_to_string(path(edit)).unwrap();
            fs::write(path(edit), source.replacen(&edit.from, &edit.to, 1)).unwrap();
        }
        let built = self.tests(&["--no-run"]);
        let found = if !built.status.success() {
            Some(format!("does not build: {}", String::from_utf8_lossy(&built.stderr)))
        } else {
            // A redundant line is missed by no test; the campaign would take long to say so, and single orders do it.
            let arguments: &[&str] =
                if fault.is_redundant { &["--", "--skip", "no_run_breaks_a_rule"] } else { &["--", fault.test()] };
            let passed = self.tests(arguments).status.success();
            match (passed, fault.is_redundant) {
                (true, false) => Some(format!("NOT caught by {}", fault.held_by)),
                (false, true) => Some("caught, and so not redundant".into()),
                _ => None,
            }
        };
        sound.iter().for_each(|(path, source)| fs::write(path, source).unwrap());
        found
    }
}

/// Every so many of the faults, by `JETWRIGHT_FAULTS_EVERY`, or those whose name has what `JETWRIGHT_FAULTS_OF` says.
#[test]
#[ignore = "builds the library anew for each fault: tests/deliberate_faults.sh"]
fn each_deliberate_fault_is_caught() {
    let asked = |name: &str| std::env::var(name).unwrap_or_default();
    let every: usize = asked("JETWRIGHT_FAULTS_EVERY").parse().unwrap_or(1);
    let of = asked("JETWRIGHT_FAULTS_OF");
    let all = hazards().into_iter().flat_map(|hazard| hazard.faults);
    let chosen = all.enumerate().filter(|(place, fault)| place % every == 0 && fault.name.contains(&of));
    let waiting = Mutex::new(chosen.map(|(_, fault)| fault));
    let next = || waiting.lock().unwrap().next();
    let missed = Mutex::new(Vec::new());
    std::thread::scope(|scope| {
        for number in 0..WORKERS {
            let (next, missed) = (&next, &missed);
            scope.spawn(move || {
                let copy = Copy::new(number);
                while let Some(fault) = next() {
                    let found = copy.tries(&fault);
                    println!("{}: {}", fault.name, found.as_deref().unwrap_or("as it should be"));
                    missed.lock().unwrap().extend(found.map(|found| format!("{}: {found}", fault.name)));
                }
            });
        }
    });
    let missed = missed.into_inner().unwrap();
    assert!(missed.is_empty(), "{}", missed.join("\n"));
}
