/* What a board's core library declares, as far as the sketch uses it. */
#include <math.h>
#include <stdint.h>

enum { LOW = 0, HIGH = 1, INPUT = 0, OUTPUT = 1, INPUT_PULLUP = 2, A0 = 14, A1 = 15, A2 = 16 };

void pinMode(int pin, int mode);
void digitalWrite(int pin, int level);
int digitalRead(int pin);
int analogRead(int pin);
void analogWrite(int pin, int level);
unsigned long millis();
