"""desktop"""
