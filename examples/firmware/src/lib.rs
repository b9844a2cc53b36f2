//! What the programs of this package share: a panic that cannot be, words to the host, a count of instructions.

#![no_std]

pub mod burner;
pub mod clock;
pub mod host;
pub mod registers;
pub mod stack;
pub mod timer;
pub mod watchdog;

use core::panic::PanicInfo;

unsafe extern "C" {
    /// Nowhere defined: a program in which any panic can be reached does not link.
    fn a_panic_can_be_reached() -> !;
}

#[panic_handler]
fn panic(_: &PanicInfo) -> ! {
    // SAFETY: never linked, so never called.
    unsafe { a_panic_can_be_reached() }
}
