/* The calls on a computer: images from files, numbers to the screen.
 *
 * Process control, never a flame safeguard: a listed one stays in charge of the gas valve.
 *
 * cc -std=c99 -I../src host.c calls.c libjetwright.a -lm -lpthread -ldl && ./a.out table.bin burner.bin
 */
#include <stdio.h>

#include "calls.h"

void tell(const char *name, const float *numbers, int count)
{
    printf("%s", name);
    for (int index = 0; index < count; index++) {
        printf(" %.9g", (double)numbers[index]);
    }
    printf("\n");
}

/* The bytes of a file; zero where there is none. */
static size_t bytes_of(const char *name, unsigned char *bytes, size_t most)
{
    size_t length = 0;
    FILE *file = fopen(name, "rb");
    if (file != NULL) {
        length = fread(bytes, 1, most, file);
        fclose(file);
    }
    return length;
}

int main(int count, char **arguments)
{
    static unsigned char table_image[4096], burner_image[4096];
    size_t table_length = count == 3 ? bytes_of(arguments[1], table_image, sizeof table_image) : 0;
    size_t burner_length = count == 3 ? bytes_of(arguments[2], burner_image, sizeof burner_image) : 0;
    if (table_length == 0 || burner_length == 0) {
        fprintf(stderr, "give the images of a table and of a burner\n");
        return 1;
    }
    if (every_call(table_image, table_length, burner_image, burner_length) != 0) {
        fprintf(stderr, "the readings in calls.c are the invented bell foundry's: another burner may refuse them\n");
        return 1;
    }
    return 0;
}
