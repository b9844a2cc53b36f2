//! What is linked into the programs.

use super::elf::read;
use super::emulator::{build_as, built, directory};

#[test]
fn no_double_precision_helper_is_linked() {
    let Some(built) = built() else { return };
    let directory = directory("firmware-helpers");
    for (program, profile) in [("settings", "release"), ("limit", "release"), ("proof", "release"), ("jet", "small")] {
        let program = build_as(profile, &built, &super::burners::demo(), &directory, program);
        let program = read(&program);
        // The search would find them: the symbols are there, and so are single precision's library functions.
        assert!(program.symbols.iter().any(|symbol| symbol == "main"), "{:?}", program.symbols);
        assert_eq!(program.double_precision_helpers(), Vec::<&String>::new());
        // A panic that can be reached would not have linked.
        assert!(!program.symbols.iter().any(|symbol| symbol.contains("panic")));
    }
}
