"""A sum of products of open figures, each with its factor: what a study comes to while its ranges
are not yet settled."""

import numpy as np


class Formula:
    """`terms`: factor by the sorted numbers of the open figures that it multiplies."""

    def __init__(self, terms):
        self.terms = terms

    @staticmethod
    def of(value):
        return value if isinstance(value, Formula) else Formula({(): value})

    def __add__(self, other):
        terms = dict(self.terms)
        for figures, factor in Formula.of(other).terms.items():
            terms[figures] = terms.get(figures, 0.0) + factor
        return Formula(terms)

    def __mul__(self, other):
        product = Formula({})
        for left, a in self.terms.items():
            for right, b in Formula.of(other).terms.items():
                product += Formula({tuple(sorted(left + right)): a * b})
        return product

    def __neg__(self):
        return self * -1

    def __sub__(self, other):
        return self + -Formula.of(other)

    def __rsub__(self, other):
        return -self + other

    def __truediv__(self, number):
        return self * (1 / number)

    __radd__, __rmul__ = __add__, __mul__


class OpenFigures:
    """Leaves every range of a study open, for `study.read`."""

    def __init__(self):
        self.ranges = []

    def __call__(self, key, low, high):
        self.ranges.append((low, high))
        return Formula({(len(self.ranges) - 1,): 1.0})

    def draw(self, count, seed):
        """A row of `count` draws for each range, all values equally likely."""
        low, high = np.array(self.ranges).T[:, :, None]
        return low + (high - low) * np.random.default_rng(seed).random((len(self.ranges), count))


def at(formulas, draws):
    """A row for each formula: its value in each what-if."""
    products = sorted({figures for formula in formulas for figures in formula.terms})
    factors = np.array([[formula.terms.get(p, 0.0) for p in products] for formula in formulas])
    values = np.empty((len(products), draws.shape[1]))
    for row, figures in zip(values, products):
        row[:] = draws[figures[0]] if figures else 1.0
        for figure in figures[1:]:
            row *= draws[figure]
    return factors @ values
