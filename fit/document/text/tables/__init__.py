"""Tables, with drawn columns and without."""
