"""Printed pages to the text body: furniture out, footnotes aside."""
