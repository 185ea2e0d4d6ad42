"""Amounts a person can measure: parts, millilitres, grams."""
