"""What colour is: spectra, lights, CIELAB, sRGB and differences, with no notion of paint."""
