"""What one document does again and again is read in one way."""
