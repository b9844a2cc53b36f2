/* The sketch on a board that is not there: what its pins read of an invented burner, and what it drives, a line a loop.
 *
 * A person starts at 1 s, lights at 40 s, turns the heat up at 60 s and down at 90 s. `PIN VALUE FROM TO` (seconds) is a
 * fault: the pin then reads that. Pin -1 is the clock, put forward by VALUE ms; pin -2 is the blower, which stands still.
 */
#include <cstdio>
#include <cstdlib>

void setup();
void loop();

/* Pins as the sketch has them. */
enum { START = 2, LIGHT = 3, STOP = 4, PERMITTED = 5, REQUEST = 6, BLOWER = 7, GAS = 9, AIR = 10, PINS = 17 };
enum { CLOCK = -1, STALLED = -2 };

static const double TICK = 0.1;
static int driven[PINS];
static double now = 0.0;
/* Where the regulator stands and what the gauge reads, Pa; the damper, as a share; the air, m3/s. */
static double regulator = 0.0, gauge = 0.0, damper = 0.0, air = 0.0;
static long loops = 0;
static int failing = 0, failed_value = 0;
static double from = 1e9, to = 1e9;

static bool fails(int pin) { return pin == failing && now >= from && now < to; }

void pinMode(int, int) {}
void digitalWrite(int pin, int level) { driven[pin] = level; }
void analogWrite(int pin, int level) { driven[pin] = level; }
unsigned long millis() { return (unsigned long)(1000.0 * now + 0.5) + (fails(CLOCK) ? (unsigned long)failed_value : 0ul); }

int digitalRead(int pin) {
  if (fails(pin)) return failed_value;
  switch (pin) {
    case START: return now >= 1.0 && now < 2.0;
    case LIGHT: return now >= 40.0 && now < 41.0;
    case PERMITTED: return HIGH;
    default: return LOW;
  }
}

int analogRead(int pin) {
  if (fails(pin)) return failed_value;
  /* A live reading is never still. */
  int noise = (int)(loops % 2);
  switch (pin) {
    case A0: return gauge > 0.0 ? (int)(gauge / 100.0) + noise : 0;
    case A1: return air > 0.0 ? (int)(air / 2e-5) + noise : 0;
    case A2: return now >= 60.0 && now < 90.0 ? 733 : 67;
    default: return 0;
  }
}

static double toward(double value, double goal, double most) {
  return goal > value + most ? value + most : goal < value - most ? value - most : goal;
}

static void plant() {
  bool turns = driven[BLOWER] == HIGH && !fails(STALLED);
  regulator = toward(regulator, driven[GAS] * 100e3 / 255.0, 12e3 * TICK);
  gauge = driven[REQUEST] == HIGH ? toward(gauge, regulator, 40e3 * TICK) : toward(gauge, 0.0, 40e3 * TICK);
  damper = toward(damper, driven[AIR] / 255.0, 0.3 * TICK);
  air = toward(air, turns ? 9.2e-3 * damper : 0.0, 3e-3 * TICK);
}

int main(int count, char **arguments) {
  if (count == 5) {
    failing = std::atoi(arguments[1]);
    failed_value = std::atoi(arguments[2]);
    from = std::atof(arguments[3]);
    to = std::atof(arguments[4]);
  }
  setup();
  for (; loops < 1200; loops++, now = TICK * (double)loops) {
    loop();
    plant();
    std::printf("loop %.9g %d %d %d %d %.9g %.9g\n", now, driven[REQUEST], driven[BLOWER], driven[GAS], driven[AIR], gauge,
                air);
  }
}
