//! The README says what a reader must know before the first fire.

use jetwright::prose::always::CAUTIONS;

const README: &str = include_str!("../../README.md");

#[test]
fn the_cautions_of_the_sheet_stand_in_the_readme_too() {
    let readme = README.split_whitespace().collect::<Vec<_>>().join(" ");
    for (about, text) in CAUTIONS {
        assert!(readme.contains(&format!("- **{about}**: {text}")), "{about}: {text}");
    }
}

/// An index of packages and the library's documentation show the page without the folder around it.
#[test]
fn no_link_leads_to_a_file_beside_it() {
    assert!(!README.contains("]("), "name a file in backquotes: a relative link leads nowhere on an index page");
}
