/* Every call of the interface once, with one invented burner. Process control, never a flame safeguard. */
#ifndef CALLS_H
#define CALLS_H

#include <stddef.h>

/* Given by the program around: what becomes of a line of numbers. */
void tell(const char *name, const float *numbers, int count);

/* Makes the calls on images of a table and of a burner, in which it flips bits and flips them back. 0 when all went. */
int every_call(unsigned char *table_image, size_t table_length, unsigned char *burner_image, size_t burner_length);

#endif
