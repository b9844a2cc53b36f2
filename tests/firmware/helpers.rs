//! What is linked into the programs.

use super::elf::read;
use super::emulator::{M0, M4F, M4F_SMALL, build_for, built, directory};

#[test]
fn no_double_precision_helper_is_linked() {
    let Some(built) = built() else { return };
    let directory = directory("firmware-helpers");
    let programs = [
        ("settings", M4F),
        ("controller", M4F),
        ("proof", M4F),
        ("jet", M4F_SMALL),
        ("settings", M0),
        ("controller", M0),
    ];
    for (program, chip) in programs {
        let program = build_for(chip, &built, &super::burners::demo(), &directory, program);
        let program = read(&program);
        // The search would find them: the symbols are there, and so are single precision's library functions.
        assert!(program.symbols.iter().any(|symbol| symbol == "main"), "{:?}", program.symbols);
        assert_eq!(program.double_precision_helpers(), Vec::<&String>::new());
        // A panic that can be reached would not have linked.
        assert!(!program.symbols.iter().any(|symbol| symbol.contains("panic")));
    }
}
