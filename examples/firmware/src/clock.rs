//! Instructions counted by the board's timer, which ticks once in forty of them in the emulator.

const CONTROL: *mut u32 = 0xE000_E010 as *mut u32;
const RELOAD: *mut u32 = 0xE000_E014 as *mut u32;
const CURRENT: *mut u32 = 0xE000_E018 as *mut u32;
const LONGEST: u32 = 0x00FF_FFFF;
const INSTRUCTIONS_A_TICK: u32 = 40;

/// Starts the timer.
pub fn start() {
    // SAFETY: the registers of the Cortex-M SysTick, which nothing else here uses.
    unsafe {
        RELOAD.write_volatile(LONGEST);
        CURRENT.write_volatile(0);
        CONTROL.write_volatile(0b101);
    }
}

fn now() -> u32 {
    // SAFETY: as above.
    unsafe { CURRENT.read_volatile() }
}

/// Instructions that `work` takes, to forty of them.
pub fn instructions<T>(work: impl FnOnce() -> T) -> (T, u32) {
    let before = now();
    let result = work();
    let after = now();
    (result, (before.wrapping_sub(after) & LONGEST) * INSTRUCTIONS_A_TICK)
}
