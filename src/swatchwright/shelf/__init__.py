"""shelf"""
