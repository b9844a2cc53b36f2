//! One word for one thing: words that a reader outside the trade's own language would stumble on are found nowhere.

use std::fs;
use std::path::Path;

use super::refused;

/// Words that stand in no text a user can meet, in lower case, one space between two.
const BANNED: [&str; 27] = [
    "nought",
    "reckon",
    "a bomb",
    "blow through",
    "blows through",
    "blown through",
    "blowing through",
    "blow the chamber through",
    "runs back ",
    "lets go",
    "relight",
    "hot through",
    " bears ",
    "a hair's turn",
    "least sure",
    "tonight",
    "last valve",
    "wrong drill",
    "half width",
    "half-width",
    "plus-minus",
    "evening",
    "gauge lies",
    "melts the lining",
    "oxidising",
    "vapour",
    "grey",
];

/// Every text of the tree that a user reads or types: pages, documents, sources of messages, headers, notebooks.
fn texts(directory: &Path, found: &mut Vec<std::path::PathBuf>) {
    for entry in fs::read_dir(directory).expect("a directory").map(|entry| entry.expect("an entry").path()) {
        let name = entry.file_name().and_then(|name| name.to_str()).unwrap_or_default();
        if entry.is_dir() {
            // The rows of published values keep the words of their sources.
            if !name.starts_with('.')
                && !["target", "reference", "__pycache__"].contains(&name)
                && !name.ends_with(".in")
            {
                texts(&entry, found);
            }
        } else if entry.extension().and_then(|end| end.to_str()).is_some_and(|end| {
            ["rs", "md", "py", "pyi", "toml", "ipynb", "h", "c", "ino", "trycmd", "html", "txt"].contains(&end)
        }) {
            found.push(entry);
        }
    }
}

#[test]
fn no_banned_word_stands_in_any_text() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut files = Vec::new();
    for part in ["src", "python", "examples", "benches", "tests"] {
        texts(&root.join(part), &mut files);
    }
    files.extend(["README.md", "DEVELOPERS.md", "CHANGELOG.md"].map(|name| root.join(name)));
    // The two that hold such words on purpose: this list, and the earlier names of keys.
    files.retain(|file| !["tests/answers/words.rs", "src/file/node.rs"].iter().any(|name| file.ends_with(name)));
    assert!(files.len() > 300, "{} files", files.len());
    let mut said = Vec::new();
    for file in files {
        let text = fs::read_to_string(&file).expect("a text").to_lowercase();
        let text: String =
            text.lines().filter(|line| !line.contains("image/png")).map(|line| format!("{line}\n")).collect();
        // A sentence that a comment breaks over two lines is one sentence.
        let words =
            text.split(['_', ' ', '\n', '\t']).filter(|word| !["", "///", "//!", "//", "#", "\\"].contains(word));
        let text = words.collect::<Vec<_>>().join(" ");
        for word in BANNED.iter().filter(|word| text.contains(*word)) {
            let at = text.find(word).unwrap_or(0);
            let around: String =
                text[..].chars().skip(text[..at].chars().count().saturating_sub(30)).take(70).collect();
            said.push(format!("{}: {word}: {around}", file.display()));
        }
        for (at, _) in text.match_indices("monoxide") {
            let before = &text[..at];
            if !["carbon ", "carbon", "carbon-", "to "].iter().any(|word| before.ends_with(word)) {
                said.push(format!("{}: monoxide without carbon", file.display()));
            }
        }
    }
    assert!(said.is_empty(), "{}", said.join("\n"));
}

#[test]
fn an_earlier_name_of_a_key_is_refused_with_its_new_one() {
    let file = super::BurnerFile::of(super::BELLS, &[("exhaust_opening = ", "exhaust_area = ")]);
    let said = refused(&["sheet", file.path()]);
    assert!(said.contains("chamber.exhaust_area") && said.contains("called \"exhaust_opening\" now"), "{said}");
}
