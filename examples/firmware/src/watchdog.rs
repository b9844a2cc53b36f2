//! The watchdog of the emulator's Cortex-M4F board: four tenths of a second without being fed begin the chip anew. For your board
//! write its own registers here. The emulator's Cortex-M0 board has none.

use core::mem::MaybeUninit;

/// Whether the board has one.
pub const IS_THERE: bool = !cfg!(board = "microbit");

const LOAD: *mut u32 = 0x4000_8000 as *mut u32;
const CONTROL: *mut u32 = 0x4000_8008 as *mut u32;
const FEED: *mut u32 = 0x4000_800C as *mut u32;
/// Two tenths of a second as the emulator counts, four for one of the processor's 25 MHz. The first end is a warning, the second begins the chip anew.
const CLOCKS: u32 = 20_000_000;

/// In memory that a new beginning leaves as it was.
#[unsafe(link_section = ".uninit.hung")]
static mut HUNG: MaybeUninit<u32> = MaybeUninit::uninit();
const MARK: u32 = 0x4455_4E47;

fn hung() -> *mut u32 {
    (&raw mut HUNG).cast()
}

/// Starts it.
pub fn start() {
    if IS_THERE {
        // SAFETY: the registers of the board's watchdog, which nothing else touches.
        unsafe {
            LOAD.write_volatile(CLOCKS);
            CONTROL.write_volatile(0b11);
        }
    }
}

/// Says that the loop goes on.
pub fn feed() {
    if IS_THERE {
        // SAFETY: as above.
        unsafe { FEED.write_volatile(1) };
    }
}

/// A loop that hangs, and leaves a mark for the next beginning.
pub fn hang() -> ! {
    // SAFETY: a word of our own, which only one program at a time writes.
    unsafe { hung().write_volatile(MARK) };
    loop {
        // SAFETY: waits for an interrupt, and touches nothing.
        unsafe { core::arch::asm!("wfi", options(nomem, nostack, preserves_flags)) };
    }
}

/// Whether the chip has begun anew after [`hang`].
pub fn has_bitten() -> bool {
    // SAFETY: as above; any bits are a word.
    let was = unsafe { hung().read_volatile() };
    unsafe { hung().write_volatile(0) };
    was == MARK
}
