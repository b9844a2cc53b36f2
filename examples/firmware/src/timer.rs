//! Milliseconds by the timer that every Cortex-M has, and sleep until the next.

use core::sync::atomic::{AtomicU32, Ordering};
use cortex_m_rt::exception;

const CONTROL: *mut u32 = 0xE000_E010 as *mut u32;
const RELOAD: *mut u32 = 0xE000_E014 as *mut u32;
const CURRENT: *mut u32 = 0xE000_E018 as *mut u32;
/// Clocks of a millisecond, of the emulator's boards: put in your own.
const CLOCKS: u32 = if cfg!(board = "microbit") { 64_000 } else { 25_000 };

static NOW: AtomicU32 = AtomicU32::new(0);

/// Counts from zero.
pub fn start() {
    // SAFETY: the registers of the Cortex-M SysTick, which nothing else in a program that uses this touches.
    unsafe {
        RELOAD.write_volatile(CLOCKS - 1);
        CURRENT.write_volatile(0);
        // By the processor's clock, with its interrupt.
        CONTROL.write_volatile(0b111);
    }
}

#[exception]
fn SysTick() {
    // The only one who writes: a chip without an atomic addition does with two steps.
    NOW.store(NOW.load(Ordering::Relaxed).wrapping_add(1), Ordering::Relaxed);
}

/// A counter that wraps after 49 days.
pub fn milliseconds() -> u32 {
    NOW.load(Ordering::Relaxed)
}

/// Sleeps until a millisecond: a tick that took long moves none of those after it.
pub fn wait_until(then: u32) {
    while milliseconds().wrapping_sub(then) > u32::MAX / 2 {
        // SAFETY: waits for an interrupt, and touches nothing.
        unsafe { core::arch::asm!("wfi", options(nomem, nostack, preserves_flags)) };
    }
}
