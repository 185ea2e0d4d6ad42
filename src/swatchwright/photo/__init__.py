"""What a photo says of a colour: the file as light, the grey in it, the colours it is made of."""
