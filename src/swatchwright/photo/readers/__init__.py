"""photo/readers"""
