//! Every command that a help, README.md or an example's README prints is run, and its page held to the one kept in
//! `tests/pages`. `TRYCMD=overwrite cargo test --all-features --test answers pages` writes them anew.

use std::fs;
use std::path::{Path, PathBuf};

use jetwright::file::blank::blank;

use super::{answer, situations};

const README: &str = include_str!("../../README.md");
const OF_EXAMPLES: &str = include_str!("../../examples/README.md");
const OF_FIRMWARE: &str = include_str!("../../examples/firmware/README.md");
const OF_C: &str = include_str!("../../examples/c/README.md");
/// How a command of ours begins, the longer ways first.
const STARTS: [&str; 4] = [
    "cargo run --release --features cli -- ",
    "cargo run --features cli -- ",
    "target/release/jetwright ",
    "jetwright ",
];

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// The inside of the fenced blocks of a language.
fn blocks<'t>(page: &'t str, language: &str) -> Vec<&'t str> {
    let fence = format!("```{language}\n");
    page.split(&fence).skip(1).map(|rest| rest.split_once("\n```").expect("a block ends").0).collect()
}

/// What stands before a mark outside of quotes.
fn before(line: &str, mark: char) -> &str {
    let mut is_quoted = false;
    let end = line.find(|c: char| {
        is_quoted ^= c == '"';
        c == mark && !is_quoted
    });
    line[..end.unwrap_or(line.len())].trim_end()
}

/// The arguments of each command of ours in lines of a shell, without comments and without the file it is written to.
fn commands(lines: &str) -> Vec<String> {
    let joined = lines.replace("\\\n", " ");
    let ours = joined.lines().filter_map(|line| STARTS.iter().find_map(|start| line.trim().strip_prefix(start)));
    ours.map(|line| before(before(line, '#'), '>').split_whitespace().collect::<Vec<_>>().join(" ")).collect()
}

/// The names of the subcommands, as the help lists them.
fn subcommands() -> Vec<String> {
    let help = answer(&["--help"]);
    let (_, list) = help.split_once("Commands:\n").expect("a list of commands");
    let names = list.lines().take_while(|line| !line.is_empty()).filter_map(|line| line.split_whitespace().next());
    names.filter(|name| *name != "help").map(str::to_owned).collect()
}

/// The commands under the help, and under each subcommand's, which must have some.
fn of_helps() -> Vec<String> {
    let each = subcommands().into_iter().map(|name| vec![name, "--help".into()]).chain([vec!["--help".to_owned()]]);
    each.flat_map(|arguments| {
        let help = answer(&arguments.iter().map(String::as_str).collect::<Vec<_>>());
        let (_, examples) = help.split_once("Example:\n").unwrap_or_else(|| panic!("{arguments:?} has no example"));
        let found = commands(examples);
        assert!(
            found.iter().any(|command| command.starts_with(&arguments[0])) || arguments.len() == 1,
            "{arguments:?}"
        );
        found
    })
    // Long pages that another library lays out.
    .filter(|command| !["completions ", "man"].iter().any(|page| command.starts_with(page)))
    .collect()
}

/// The sheet of every example in inches, and of the weighed one as the README of the examples shows it.
fn of_examples() -> Vec<String> {
    let names = ["bell-foundry", "bell-foundry-weighed", "blower-too-small", "casting", "natural-gas"];
    let inches = names.map(|name| format!("sheet examples/{name}.toml --units inch"));
    inches.into_iter().chain(["sheet examples/bell-foundry-weighed.toml".to_owned()]).collect()
}

/// The files that the commands read, in a directory of their own: the examples, a blank, and the situations.
fn files_for(case: &Path) {
    let directory = case.with_extension("in");
    let _ = fs::remove_dir_all(&directory);
    fs::create_dir_all(directory.join("examples")).expect("a directory for the test");
    for entry in fs::read_dir(root().join("examples")).expect("examples").map(|entry| entry.expect("a file")) {
        if entry.path().extension().is_some_and(|end| end == "toml") {
            fs::copy(entry.path(), directory.join("examples").join(entry.file_name())).expect("a copy");
        }
    }
    let blanks = ["burner", "mine"].map(|name| (name, blank()));
    for (name, text) in blanks.into_iter().chain(situations::files()) {
        fs::write(directory.join(name).with_extension("toml"), text).expect("a file for the test");
    }
}

/// The commands that a kept page runs.
fn kept(page: &str) -> Vec<String> {
    page.lines().filter_map(|line| line.strip_prefix("$ jetwright ")).map(str::to_owned).collect()
}

/// Runs them all, and holds what the READMEs show of a page, whole or in part, to one of those kept.
#[test]
fn every_documented_command_prints_the_page_that_is_kept() {
    let readmes = |page: &str| commands(&blocks(page, "sh").join("\n"));
    let pages = root().join("tests/pages");
    let cases = trycmd::TestCases::new();
    cases.register_bin("jetwright", PathBuf::from(env!("CARGO_BIN_EXE_jetwright")));
    let sources = [
        ("help", of_helps()),
        ("readme", readmes(&format!("{README}\n{OF_EXAMPLES}"))),
        ("firmware", readmes(OF_FIRMWARE)),
        ("c", readmes(OF_C)),
        ("examples", of_examples()),
        ("situations", situations::commands()),
    ];
    for (name, mut wanted) in sources {
        let mut seen = std::collections::HashSet::new();
        // The schema is for editors and has tests of its own.
        wanted.retain(|command| command != "schema" && seen.insert(command.clone()));
        assert!(!wanted.is_empty(), "{name}");
        let case = pages.join(name).with_extension("trycmd");
        let now = fs::read_to_string(&case).unwrap_or_default();
        if kept(&now) != wanted {
            assert!(
                std::env::var_os("TRYCMD").is_some_and(|value| value == "overwrite"),
                "{name} prints other commands than {}: TRYCMD=overwrite cargo test --all-features --test answers pages",
                case.display()
            );
            let blocks = wanted.iter().map(|command| format!("```console\n$ jetwright {command}\n```\n"));
            fs::write(&case, blocks.collect::<Vec<_>>().join("\n")).expect("the page can be written");
        }
        files_for(&case);
        cases.case(&case);
    }
    cases.run();
    for page in ["help", "readme", "firmware", "c", "examples", "situations"] {
        let kept = fs::read_to_string(pages.join(page).with_extension("trycmd")).expect("kept pages");
        assert!(!kept.lines().any(|line| line.starts_with("? ")), "{page} has a command that is refused");
    }
    // The measured jet of the bells is what the command of the examples' README writes.
    let jet = |directory: &Path| fs::read_to_string(directory.join("examples/bell-foundry-jet.toml")).expect("a jet");
    assert_eq!(jet(&pages.join("readme.in")), jet(root()));
    let kept = ["readme", "examples"].map(|name| fs::read_to_string(pages.join(name).with_extension("trycmd")));
    let kept: Vec<String> = kept.into_iter().map(|page| page.expect("kept pages")).collect();
    let pages: Vec<&str> = kept.iter().flat_map(|pages| pages.split("$ jetwright ")).collect();
    for block in [README, OF_EXAMPLES].into_iter().flat_map(|readme| blocks(readme, "text")) {
        let has = |page: &&str| {
            let mut lines = page.lines();
            block.lines().all(|shown| lines.any(|line| line == shown))
        };
        assert!(pages.iter().any(has), "a README shows what nothing prints:\n{block}");
    }
}
