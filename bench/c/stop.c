/*
 * The stop of engine/motion/stop.ts written anew in plain scalar C: one rail, no bad spot, no lower speed. What the
 * engine leaves to its plain march is told as NaN.
 *
 *   stop <file of doubles> <repeats>
 *
 * Prints the quickest time of one stop, ns, and the distance of each case, m.
 */
#define _POSIX_C_SOURCE 199309L
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

enum { RAMP = 10, NODES = 46, NOTICE = 5, REACTION_MOST = 10, BRAKE_MOST = 64, BRAKE_LEAST = 5, CORRECTIONS = 4 };
static const double SPEED_STEP = 0.44704, REACTION_LENGTH = 0.75, CORRECT_FROM = 0.02, NEAR_BALANCE = 0.3;

typedef struct {
  double from, step, massFactor, inertia, stride, reaction, dt, notice, a, b, c;
  int count, channels;
  const double *W, *slope, *mean, *lead, *node, *factor, *early, *force;
} Model;

static inline int cellOf(const Model *m, double s, double *t) {
  double r = (s - m->from) / m->step;
  int j = (int)r;
  if (j < 0) j = 0;
  else if (j > m->count - 2) j = m->count - 2;
  *t = r - j;
  return j;
}

static inline double slopeOf(const Model *m, double s) {
  double t;
  int j = cellOf(m, s, &t);
  return m->slope[j] * (1 - t) * (1 - 3 * t) + m->slope[j + 1] * t * (3 * t - 2) +
         (m->W[j + 1] - m->W[j]) / m->step * 6 * t * (1 - t);
}

static inline double levelOf(const Model *m, double s) {
  double t;
  int j = cellOf(m, s, &t);
  double u = 1 - t;
  return m->W[j] * (1 + 2 * t) * u * u + m->W[j + 1] * t * t * (3 - 2 * t) +
         m->step * t * u * (m->slope[j] * u - m->slope[j + 1] * t);
}

static inline double bySpeed(const double *table, double v) {
  double r = v / SPEED_STEP;
  int i = (int)r;
  if (i >= NODES - 1) return table[NODES - 1];
  return table[i] + (r - i) * (table[i + 1] - table[i]);
}

static inline double netEarly(const Model *m, double v, double s) {
  return bySpeed(m->early, v) + m->a + v * (m->b + v * m->c) + m->massFactor * slopeOf(m, s);
}

/* Where speed is lost inside a step of the build-up, by halving to the last bit that matters. */
static double withinStep(const Model *m, int k, double v, double pull) {
  double first = 0, last = 0, middle = 0;
  for (int i = 0; i < m->channels; i++) {
    double f = bySpeed(m->factor + i * NODES, v / 2);
    first += f * m->node[i * (RAMP + 1) + k];
    last += f * m->node[i * (RAMP + 1) + k + 1];
    middle += f * m->mean[i * RAMP + k];
  }
  double bow = 6 * (middle - (first + last) / 2), bend = last - first + bow, share = m->dt / m->inertia;
  double low = 0, high = 1;
  for (int n = 0; n < 50; n++) {
    double x = (low + high) / 2;
    if (v - share * x * (first + pull + x * (bend / 2 - x * bow / 3)) > 0) low = x;
    else high = x;
  }
  double x = (low + high) / 2;
  return m->dt * x * (v - share * x * ((first + pull) / 2 + x * (bend / 6 - x * bow / 12)));
}

static double stop(const Model *m, double s0, double v0) {
  double end = m->from + (m->count - 1) * m->step, s = s0, v = v0;
  double reach = v0 * m->reaction / REACTION_LENGTH;
  int reactionSteps = reach < REACTION_MOST ? 1 + (int)reach : REACTION_MOST;
  double hr = m->reaction / reactionSteps;
  for (int k = 0; k < reactionSteps; k++) {
    double pull = m->a + v * (m->b + v * m->c) + m->massFactor * slopeOf(m, s + 0.5 * v * hr);
    double gain = pull < 0 && v > 0 ? -pull / m->inertia : 0;
    s += hr * (v + 0.5 * gain * hr);
    v += gain * hr;
  }
  double slowing = 0;
  for (int k = 0; k < RAMP && v > 0; k++) {
    double middle = v - 0.5 * slowing;
    if (middle < 0) middle = 0;
    double pull = m->a + middle * (m->b + middle * m->c) +
                  m->massFactor * slopeOf(m, s + 0.5 * (v + middle) * 0.5 * m->dt);
    double effort = 0, shift = 0;
    for (int i = 0; i < m->channels; i++) {
      double f = i == 0 ? 1 : bySpeed(m->factor + i * NODES, middle);
      effort += f * m->mean[i * RAMP + k];
      shift += f * m->lead[i * RAMP + k];
    }
    slowing = (effort + pull) * m->dt / m->inertia;
    if (slowing >= v) {
      double distance = s - s0 + withinStep(m, k, v, pull);
      return s0 + distance > end ? INFINITY : distance;
    }
    s += m->dt * (v - (shift + 0.5 * pull) * m->dt / m->inertia);
    v -= slowing;
  }
  if (m->notice > 0) {
    double h = m->notice / NOTICE;
    for (int k = 0; k < NOTICE; k++) {
      double middle = v - 0.5 * h * netEarly(m, v, s) / m->inertia;
      if (middle < 0) middle = 0;
      double net = netEarly(m, middle, s + 0.25 * h * (v + middle)), slower = h * net / m->inertia;
      if (slower >= v) {
        double distance = s + v * (v * m->inertia / net) / 2 - s0;
        return s0 + distance > end ? INFINITY : distance;
      }
      s += h * (v - 0.5 * slower);
      v -= slower;
    }
  }
  double level = levelOf(m, s), pull = slopeOf(m, s), reached = level, half = 0.5 * v * v;
  double expected = m->inertia * half / (bySpeed(m->force, v) + m->a + m->massFactor * pull);
  int steps = BRAKE_LEAST;
  if (!(expected >= 0 && expected < BRAKE_MOST * m->stride)) steps = BRAKE_MOST;
  else if (expected > BRAKE_LEAST * m->stride) steps = (int)ceil(expected / m->stride);
  double u = half / steps, time = m->reaction + RAMP * m->dt + m->notice, speed = v;
  for (int k = 0; k < steps; k++) {
    double vm = sqrt(2 * half - u);
    double hold = bySpeed(m->force, vm) + m->a + vm * (m->b + vm * m->c);
    double net = hold + m->massFactor * pull;
    if (!(net > NEAR_BALANCE * hold) || s > end) return NAN;
    double step = m->inertia * u / net, more = step;
    for (int n = 0; n < CORRECTIONS && fabs(more) > CORRECT_FROM * step; n++) {
      double next = levelOf(m, s + step);
      pull = slopeOf(m, s + step);
      double tail = hold + m->massFactor * pull;
      if (!(tail > NEAR_BALANCE * hold)) return NAN;
      more = (m->inertia * u - hold * step - m->massFactor * (next - level)) / tail;
      step += more;
      reached = next + more * pull;
    }
    level = reached;
    s += step;
    half = half - u > 0 ? half - u : 0;
    double after = sqrt(2 * half);
    time += 2 * step / (speed + after);
    speed = after;
  }
  /* The time is reckoned as there, and must not be left out by the compiler. */
  return s > end || time < 0 ? INFINITY : s - s0;
}

static double seconds(void) {
  struct timespec t;
  clock_gettime(CLOCK_MONOTONIC, &t);
  return t.tv_sec + 1e-9 * t.tv_nsec;
}

int main(int argc, char **argv) {
  if (argc < 3) return 2;
  FILE *file = fopen(argv[1], "rb");
  if (!file) return 2;
  fseek(file, 0, SEEK_END);
  long size = ftell(file);
  rewind(file);
  double *all = malloc(size);
  if (!all || fread(all, 1, size, file) != (size_t)size) return 2;
  fclose(file);
  const double *at = all;
  Model m = {at[0], at[1], at[2], at[3], at[4], at[5], at[6], at[7], at[8], at[9], at[10], (int)at[11], (int)at[12],
             0, 0, 0, 0, 0, 0, 0, 0};
  int cases = (int)at[13], repeats = atoi(argv[2]);
  at += 14;
  m.W = at, at += m.count;
  m.slope = at, at += m.count;
  m.mean = at, at += m.channels * RAMP;
  m.lead = at, at += m.channels * RAMP;
  m.node = at, at += m.channels * (RAMP + 1);
  m.factor = at, at += m.channels * NODES;
  m.early = at, at += NODES;
  m.force = at, at += NODES;
  double *told = malloc(cases * sizeof *told), best = INFINITY;
  for (int run = 0; run < 60; run++) {
    double start = seconds();
    for (int r = 0; r < repeats; r++)
      for (int i = 0; i < cases; i++) told[i] = stop(&m, at[2 * i], at[2 * i + 1]);
    double took = (seconds() - start) / ((double)repeats * cases);
    if (took < best) best = took;
  }
  printf("%.3f\n", best * 1e9);
  for (int i = 0; i < cases; i++) printf("%.12g\n", told[i]);
  return 0;
}
