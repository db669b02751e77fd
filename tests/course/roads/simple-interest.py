"""Interest by paying it out cent by cent: each hundred dollars brings so many dollars a year, month by month."""

from __future__ import annotations

from fractions import Fraction


def _brought(principal, rate, months):
    """What has come in after so many months, a twelfth of the year's interest each month."""
    purse = Fraction(0)
    for _ in range(int(months)):
        for _hundred in range(int(principal) // 100):
            purse += Fraction(rate) / 12
        purse += Fraction(int(principal) % 100, 100) * Fraction(rate) / 12
    return purse


def interest_for_years(p, r, t):
    return _brought(p, r, 12 * t)


def which_line_is_interest(p, r, t, choices):
    def worth(written):
        total = Fraction(0)
        for term in written.replace(",", "").split(" + "):
            product = Fraction(1)
            for factor in term.split(" × "):
                product *= Fraction(factor)
            total += product
        return total

    return [choice for choice in choices if worth(choice) == _brought(p, r, 12 * t)]


def interest_for_months(p, r, m):
    return _brought(p, r, m)


def all_at_the_end(p, r, t):
    return p + _brought(p, r, 12 * t)


def which_loan_costs_less(p, a, t, b, s):
    first, second = _brought(p, a, 12 * t), _brought(p, b, 12 * s)
    return "both the same" if first == second else "the first" if first < second else "the second"


def until_it_has_grown(p, r, q):
    a_year, purse, hits = _brought(p, r, 12), Fraction(p), []
    for years in range(1, 40):
        purse += a_year
        if purse == q:
            hits.append(years)
    return hits
