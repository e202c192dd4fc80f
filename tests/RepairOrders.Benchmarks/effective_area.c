/* The yardstick: every stretch of a river-bottom profile in turn, as one would write it in C. */
#include <math.h>

double weakest(const double *x, const double *d, double *area, int n, double D, double t, int *from, int *to)
{
    double least = INFINITY;
    area[0] = 0;
    for (int k = 1; k < n; k++)
        area[k] = area[k - 1] + 0.5 * (x[k] - x[k - 1]) * (d[k] + d[k - 1]);
    for (int i = 0; i < n - 1; i++)
        for (int j = i + 1; j < n; j++) {
            double L = x[j] - x[i];
            double z = L * L / (D * t);
            double M = z <= 50 ? sqrt(1 + 0.6275 * z - 0.003375 * z * z) : 0.032 * z + 3.3;
            double q = (area[j] - area[i]) / (L * t);
            double f = (1 - q) / (1 - q / M);
            if (f < least) {
                least = f;
                *from = i;
                *to = j;
            }
        }
    return least;
}
