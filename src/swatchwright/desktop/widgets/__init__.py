"""desktop/widgets"""
