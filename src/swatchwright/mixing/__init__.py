"""mixing"""
