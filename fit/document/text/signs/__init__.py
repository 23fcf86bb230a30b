"""What one or two lines show by themselves, whatever stands around them."""
