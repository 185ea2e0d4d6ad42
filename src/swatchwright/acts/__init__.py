"""What a person does with the program, one Qt-free function each; both faces call them."""
