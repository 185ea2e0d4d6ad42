"""acts"""
