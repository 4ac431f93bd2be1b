/* The loops of the maps over plate x object, as plain C. Timed beside ours by maps.mjs, which writes what is read here.
   usage: maps IN [OUT]  IN: counts of plate points, object points and table entries, then the columns, all doubles; OUT: all path differences, then the brightnesses
   Prints milliseconds of processor time of the path differences and of the brightnesses, each after one run to warm up. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

static void path_differences(int plates, int objects, const double *px, const double *py, const double *pz, const double *to_plate,
                             const double *ox, const double *oy, const double *oz, const double *to_object, double *out) {
  long k = 0;
  for (int p = 0; p < plates; p++) {
    double x = px[p], y = py[p], z = pz[p], reference = to_plate[p];
    for (int o = 0; o < objects; o++) {
      double dx = ox[o] - x, dy = oy[o] - y, dz = oz[o] - z;
      out[k++] = to_object[o] + sqrt(dx * dx + dy * dy + dz * dz) - reference;
    }
  }
}

static void brightnesses(int plates, int objects, const double *px, const double *py, const double *pz, const double *to_plate,
                         const double *ox, const double *oy, const double *oz, const double *to_object,
                         const double *contrasts, int last, double per_step, double *out) {
  for (int o = 0; o < objects; o++) {
    double x = ox[o], y = oy[o], z = oz[o], path = to_object[o], sum = 0;
    for (int p = 0; p < plates; p++) {
      double dx = px[p] - x, dy = py[p] - y, dz = pz[p] - z;
      double steps = fabs(path + sqrt(dx * dx + dy * dy + dz * dz) - to_plate[p]) * per_step;
      double at = steps < last ? steps : last;
      int i = (int)at;
      double before = contrasts[i];
      double contrast = before + (at - i) * (contrasts[i + 1] - before);
      sum += contrast * contrast;
    }
    out[o] = sum / plates;
  }
}

static double now(void) {
  struct timespec t;
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
  return t.tv_sec * 1e3 + t.tv_nsec / 1e6;
}

int main(int count, char **words) {
  if (count < 2) return 2;
  FILE *in = fopen(words[1], "rb");
  double head[4];
  if (!in || fread(head, sizeof(double), 4, in) != 4) return 3;
  int plates = (int)head[0], objects = (int)head[1], entries = (int)head[2];
  double per_step = 1 / head[3];
  long given = 4L * plates + 4L * objects + entries, pairs = (long)plates * objects;
  double *data = malloc(given * sizeof(double)), *differences = malloc(pairs * sizeof(double)), *bright = malloc(objects * sizeof(double));
  if (!data || !differences || !bright || fread(data, sizeof(double), given, in) != (size_t)given) return 3;
  fclose(in);
  const double *px = data, *py = px + plates, *pz = py + plates, *to_plate = pz + plates;
  const double *ox = to_plate + plates, *oy = ox + objects, *oz = oy + objects, *to_object = oz + objects, *contrasts = to_object + objects;
  double ms[2];
  for (int turn = 0; turn < 2; turn++) {
    double start = now();
    path_differences(plates, objects, px, py, pz, to_plate, ox, oy, oz, to_object, differences);
    ms[0] = now() - start;
    start = now();
    brightnesses(plates, objects, px, py, pz, to_plate, ox, oy, oz, to_object, contrasts, entries - 2, per_step, bright);
    ms[1] = now() - start;
  }
  if (count > 2) {
    FILE *out = fopen(words[2], "wb");
    if (!out || fwrite(differences, sizeof(double), pairs, out) != (size_t)pairs || fwrite(bright, sizeof(double), objects, out) != (size_t)objects) return 3;
    fclose(out);
  }
  printf("%.6f %.6f\n", ms[0], ms[1]);
  return 0;
}
