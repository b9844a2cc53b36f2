/* The calls of the C example on a bare chip in the emulator: start, images from files of the host and numbers to its
 * screen by semihosting, and how deep the stack went. */
#include <stdint.h>

#include "calls.h"

extern uint32_t data_start[], data_end[], data_image[], bss_start[], bss_end[], stack_top[];

#define PAINT 0x5AFE57ACu

void start(void);

__attribute__((section(".vectors"), used)) static void *const vectors[] = {stack_top, (void *)start};

static uint32_t host(uint32_t operation, const void *block)
{
    register uint32_t r0 __asm__("r0") = operation;
    register const void *r1 __asm__("r1") = block;
    __asm__ volatile("bkpt 0xAB" : "+r"(r0) : "r"(r1) : "memory");
    return r0;
}

static void say(const char *text)
{
    host(0x04, text);
}

static void say_word(uint32_t word)
{
    char text[] = " 00000000";
    for (int digit = 8; digit > 0; digit--, word >>= 4) {
        text[digit] = "0123456789abcdef"[word & 15];
    }
    say(text);
}

/* The bits of each number: to print it would take double precision. */
void tell(const char *name, const float *numbers, int count)
{
    say(name);
    for (int index = 0; index < count; index++) {
        union {
            float number;
            uint32_t word;
        } bits = {numbers[index]};
        say_word(bits.word);
    }
    say("\n");
}

static uint32_t bytes_of(const char *name, uint32_t letters, unsigned char *bytes, uint32_t most)
{
    const struct {
        const char *name;
        uint32_t mode, letters;
    } open = {name, 1, letters};
    uint32_t handle = host(0x01, &open);
    const struct {
        uint32_t handle;
        unsigned char *bytes;
        uint32_t most;
    } read = {handle, bytes, most};
    return handle == UINT32_MAX ? 0 : most - host(0x06, &read);
}

static void all(void)
{
    static unsigned char table_image[320], burner_image[1024];
    uint32_t table_length = bytes_of("table.jwt", 9, table_image, sizeof table_image);
    uint32_t burner_length = bytes_of("burner.jwt", 10, burner_image, sizeof burner_image);
    uint32_t *top = __builtin_frame_address(0), *place;
    int failed = 1;
    for (place = bss_end; place < top - 32; place++) {
        *(volatile uint32_t *)place = PAINT;
    }
    failed = every_call(table_image, table_length, burner_image, burner_length);
    for (place = bss_end; place < top && *(volatile uint32_t *)place == PAINT; place++) {
    }
    failed |= place == bss_end;
    say("stack");
    say_word((uint32_t)((uintptr_t)top - (uintptr_t)place));
    say("\n");
    host(0x18, (const void *)(uintptr_t)(failed ? 0x20023 : 0x20026));
}

void start(void)
{
    uint32_t *to, *from = data_image;
#ifdef __ARM_FP
    *(volatile uint32_t *)0xE000ED88u |= 0xFu << 20;
    __asm__ volatile("dsb\n isb");
#endif
    for (to = data_start; to < data_end; to++) {
        *to = *from++;
    }
    for (to = bss_start; to < bss_end; to++) {
        *to = 0;
    }
    all();
    for (;;) {
    }
}
