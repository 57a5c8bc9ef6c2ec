"""Nanoseconds to test one spot of four elements in Python, with the arithmetic of the program: turn mass to atomic parts,
close them, carry their uncertainties through the closing, the calibration error of all elements with its additive floor,
the log odds against nominal, and the two-sided p of a normal deviate to full accuracy. Spots that would need the linear
scale too (none of these do) are only looked for. The best of many short rounds. Invented numbers.

usage: screen.py numpy | uncertainties
"""
import math
import sys
import time

WEIGHTS = [107.8682, 63.546, 65.38, 118.710]
NOMINAL = [0.56, 0.22, 0.17, 0.05]
MASS = [0.64, 0.15, 0.12, 0.09]
RELATIVE = 0.125                      # calibration error of a spot without standards
FLOOR = 0.001                         # its additive part, a mass fraction
ROUNDING = 1e-4 / math.sqrt(12)       # of what was printed with two decimals of a percent
ROUNDS = 200
BLOCK = 2000                          # spots whose arrays fit into the cache: faster than all at once

# erfc(x) exp(x^2): W. J. Cody, Math. Comp. 23 (1969) 631. Meant for 0.46875 to 4; within 5e-12 for every x above 0.
UPPER = [2.15311535474403846e-8, 5.64188496988670089e-1, 8.88314979438837594e0, 6.61191906371416295e1,
         2.98635138197400131e2, 8.81952221241769090e2, 1.71204761263407058e3, 2.05107837782607147e3,
         1.23033935479799725e3]
LOWER = [1.0, 1.57449261107098347e1, 1.17693950891312499e2, 5.37181101862009858e2, 1.62138957456669019e3,
         3.29079923573345963e3, 4.36261909014324716e3, 3.43936767414372164e3, 1.23033935480374942e3]


def polynomial(coefficients, x):
    result = coefficients[0] * x
    for coefficient in coefficients[1:-1]:
        result += coefficient
        result *= x
    result += coefficients[-1]
    return result


def with_numpy(count):
    import numpy as np
    random = np.random.default_rng(20261124)
    all_mass = np.array(MASS) * (1 + 0.02 * random.standard_normal((count, 4)))
    all_u = 0.02 * all_mass
    weights = np.array(WEIGHTS)
    nominal = np.array(NOMINAL)
    nominal_logit = np.log(nominal / (1 - nominal))
    others = 1 - np.eye(4)

    def test(mass, u):
        parts = mass / weights
        total = parts.sum(axis=1, keepdims=True)
        x = parts / total
        rest = 1 - x
        x_squared = x * x
        rest_squared = rest * rest

        def closed(squares):          # diagonal of J S J': own part and that of the others
            return rest_squared * squares + x_squared * (squares @ others)

        random_error = np.maximum(np.sqrt(closed((u / weights / total) ** 2)), ROUNDING)
        floor_squared = (FLOOR * (x @ weights)[:, None] / weights) ** 2
        shared_squared = closed(RELATIVE ** 2 * x_squared + floor_squared)
        edge = np.minimum(x, rest)
        hull = (random_error >= 0.2 * edge) | (closed(floor_squared) >= (0.05 * edge) ** 2)
        distance = np.abs(np.log(x / rest) - nominal_logit) * x * rest
        z = distance / np.sqrt(2 * (random_error * random_error + shared_squared))
        return polynomial(UPPER, z) / polynomial(LOWER, z) * np.exp(-z * z), hull

    def best():
        start = time.perf_counter_ns()
        for i in range(0, count, BLOCK):
            test(all_mass[i:i + BLOCK], all_u[i:i + BLOCK])
        return time.perf_counter_ns() - start

    return min(best() for _ in range(ROUNDS)) / count


def with_uncertainties(count):
    from uncertainties import ufloat, umath

    def errors(value):
        parts = {"random": 0.0, "shared": 0.0}
        for variable, error in value.error_components().items():
            parts[variable.tag] += error * error
        return parts

    def test(mass, u):
        parts = [m / w for m, w in zip(mass, WEIGHTS)]
        mean_weight = sum(mass) / sum(parts)
        measured = [ufloat(part, s / w, "random")
                    + ufloat(0, math.hypot(RELATIVE * part, FLOOR * mean_weight * sum(parts) / w), "shared")
                    for part, s, w in zip(parts, u, WEIGHTS)]
        total = sum(measured)
        result = []
        for part, nominal in zip(measured, NOMINAL):
            x = part / total
            shift = umath.log(x / (1 - x)) - math.log(nominal / (1 - nominal))
            found = errors(shift)
            random_error = max(math.sqrt(found["random"]), ROUNDING / (x.n * (1 - x.n)))
            result.append(math.erfc(abs(shift.n) / math.sqrt(2 * (random_error ** 2 + found["shared"]))))
        return result

    def once():
        start = time.perf_counter_ns()
        for _ in range(count):
            test(MASS, [0.02 * m for m in MASS])
        return time.perf_counter_ns() - start

    return min(once() for _ in range(ROUNDS)) / count


print(with_numpy(50_000) if sys.argv[1] == "numpy" else with_uncertainties(100))
