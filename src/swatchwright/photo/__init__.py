"""photo"""
