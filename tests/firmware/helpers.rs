//! What is linked into the programs.

use super::elf::read;

#[test]
fn no_double_precision_helper_is_linked() {
    let Some(built) = super::emulator::built() else { return };
    let directory = super::emulator::directory("firmware-helpers");
    for program in ["settings", "limit", "proof"] {
        let program = super::emulator::build(&built, &super::burners::demo(), &directory, program);
        let program = read(&program);
        // The search would find them: the symbols are there, and so are single precision's library functions.
        assert!(program.symbols.iter().any(|symbol| symbol == "main"), "{:?}", program.symbols);
        assert_eq!(program.double_precision_helpers(), Vec::<&String>::new());
        // A panic that can be reached would not have linked.
        assert!(!program.symbols.iter().any(|symbol| symbol.contains("panic")));
    }
}
