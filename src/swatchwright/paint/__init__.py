"""paint"""
