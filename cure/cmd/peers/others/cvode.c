/* The coupon with CVODE of SUNDIALS: BDF, Newton with a banded or a dense Jacobian. Prints one line of JSON for each
 * tolerance; with "failed" where CVODE gave up.
 *
 *     cvode band|dense CELLS REPEATS TOLERANCE...
 *
 * The film's enthalpy and water mass (the two unknowns behind the wall's) are felt by every cell. The banded Jacobian leaves
 * that out, which Newton's method bears; both are differenced here, group by group, because CVODE's own differences would
 * take what those two do to all cells for the doing of their neighbours. Hindmarsh et al. (2005), SUNDIALS, ACM Transactions on
 * Mathematical Software 31, 363-396. */
#include <cvode/cvode.h>
#include <math.h>
#include <nvector/nvector_serial.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sunlinsol/sunlinsol_band.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_band.h>
#include <sunmatrix/sunmatrix_dense.h>
#include <time.h>

#include "libcoupon.h"

enum { BAND = 3, MARKS = 3, WALLS = 8 };
static const double END = 1800.0;

static int n, counted; /* unknowns; those before the counts, on which nothing depends */
static double *scale, *work, *shifted;
static long calls;

static void check(int ok, const char *what) {
  if (!ok) {
    fprintf(stderr, "cvode: %s failed\n", what);
    exit(1);
  }
}

static int rates(realtype t, N_Vector y, N_Vector f, void *data) {
  (void)data;
  calls++;
  coupon_rates(t, NV_DATA_S(y), NV_DATA_S(f), 1);
  for (int i = 0; i < n; i++)
    if (isnan(NV_Ith_S(f, i))) return 1; /* try a shorter step */
  return 0;
}

static int margins(realtype t, N_Vector y, realtype *g, void *data) {
  (void)t, (void)data;
  coupon_margins(NV_DATA_S(y), g);
  return 0;
}

static double nudge(double y, int i) { return sqrt(2.2e-16) * fmax(fabs(y), 1e-3 * scale[i]); }

/* Columns that no row feels together are shifted together. The two unknowns that all feel have a turn each. */
static int difference(realtype t, const double *y, const double *f, SUNMatrix J, int band) {
  int groups = band ? 2 * BAND + 1 : counted;
  for (int g = 0; g < groups + 2; g++) {
    memcpy(shifted, y, n * sizeof *y);
    int any = 0;
    for (int c = 0; c < counted; c++) {
      int common = c == WALLS || c == WALLS + 1;
      if (common ? g != groups + c - WALLS : c % groups != g) continue;
      shifted[c] += nudge(y[c], c);
      any = 1;
    }
    if (!any) continue;
    calls++;
    coupon_rates(t, shifted, work, 1);
    for (int c = 0; c < counted; c++) {
      if (shifted[c] == y[c]) continue;
      double h = shifted[c] - y[c];
      int lo = band && c > BAND ? c - BAND : 0, hi = band ? c + BAND : n - 1;
      for (int r = lo; r <= hi && r < n; r++) {
        double v = (work[r] - f[r]) / h;
        if (isnan(v)) return 1;
        if (band) SM_ELEMENT_B(J, r, c) = v;
        else SM_ELEMENT_D(J, r, c) = v;
      }
    }
  }
  return 0;
}

static int jacobian(realtype t, N_Vector y, N_Vector f, SUNMatrix J, void *data, N_Vector a, N_Vector b, N_Vector c) {
  (void)a, (void)b, (void)c;
  SUNMatZero(J);
  return difference(t, NV_DATA_S(y), NV_DATA_S(f), J, *(int *)data);
}

static double now(void) {
  struct timespec t;
  clock_gettime(CLOCK_MONOTONIC, &t);
  return t.tv_sec + 1e-9 * t.tv_nsec;
}

static void print(const char *name, const double *v, int count) {
  printf(",\"%s\":[", name);
  for (int i = 0; i < count; i++) printf("%s%.17g", i ? "," : "", v[i]);
  printf("]");
}

static void measure(int band, int cells, int repeats, double tol) {
  double least = INFINITY, marks[MARKS] = {0};
  long steps = 0, jacobians = 0, factors = 0;
  int failed = 0;
  N_Vector y = NULL;
  SUNContext context;
  check(SUNContext_Create(NULL, &context) == 0, "SUNContext_Create");
  for (int k = 0; k < repeats && !failed; k++) {
    double begun = now();
    n = coupon_new(cells);
    check(n > 0, "coupon_new");
    scale = realloc(scale, n * sizeof *scale);
    work = realloc(work, n * sizeof *work);
    shifted = realloc(shifted, n * sizeof *shifted);
    if (y) N_VDestroy(y);
    y = N_VNew_Serial(n, context);
    N_Vector tolerance = N_VNew_Serial(n, context);
    coupon_start(NV_DATA_S(y), scale);
    counted = 0;
    for (int i = 0; i < n; i++) {
      NV_Ith_S(tolerance, i) = isinf(scale[i]) ? 1e300 : tol * scale[i];
      if (!isinf(scale[i])) counted = i + 1;
    }
    calls = 0;
    void *solver = CVodeCreate(CV_BDF, context);
    check(solver && CVodeInit(solver, rates, 0, y) == 0, "CVodeInit");
    check(CVodeSVtolerances(solver, tol, tolerance) == 0, "CVodeSVtolerances");
    check(CVodeSetUserData(solver, &band) == 0, "CVodeSetUserData");
    SUNMatrix J = band ? SUNBandMatrix(n, BAND, BAND, context) : SUNDenseMatrix(n, n, context);
    SUNLinearSolver linear = band ? SUNLinSol_Band(y, J, context) : SUNLinSol_Dense(y, J, context);
    check(CVodeSetLinearSolver(solver, linear, J) == 0 && CVodeSetJacFn(solver, jacobian) == 0, "CVodeSetLinearSolver");
    check(CVodeSetMaxNumSteps(solver, 1000000) == 0, "CVodeSetMaxNumSteps");
    check(CVodeRootInit(solver, MARKS, margins) == 0, "CVodeRootInit");
    check(CVodeSetStopTime(solver, END) == 0, "CVodeSetStopTime");
    realtype t = 0;
    while (t < END) {
      int how = CVode(solver, END, y, &t, CV_NORMAL), found[MARKS];
      if ((failed = how < 0)) break;
      if (how != CV_ROOT_RETURN) continue;
      CVodeGetRootInfo(solver, found);
      for (int i = 0; i < MARKS; i++)
        if (found[i]) marks[i] = t;
    }
    CVodeGetNumSteps(solver, &steps);
    CVodeGetNumJacEvals(solver, &jacobians);
    CVodeGetNumLinSolvSetups(solver, &factors);
    least = fmin(least, now() - begun);
    CVodeFree(&solver);
    SUNLinSolFree(linear);
    SUNMatDestroy(J);
    N_VDestroy(tolerance);
  }
  printf("{\"solver\":\"CVODE %s\",\"tolerance\":%g,\"seconds\":%.9g,\"steps\":%ld,\"derivatives\":%ld,\"jacobians\":%ld,\"factors\":%ld",
         band ? "band" : "dense", tol, least, steps, calls, jacobians, factors);
  if (failed) printf(",\"failed\":true");
  print("marks", marks, MARKS);
  print("state", NV_DATA_S(y), n);
  printf("}\n");
  N_VDestroy(y);
  SUNContext_Free(&context);
}

int main(int argc, char **argv) {
  if (argc < 5) {
    fprintf(stderr, "cvode band|dense CELLS REPEATS TOLERANCE...\n");
    return 2;
  }
  for (int i = 4; i < argc; i++) measure(strcmp(argv[1], "band") == 0, atoi(argv[2]), atoi(argv[3]), atof(argv[i]));
  return 0;
}
