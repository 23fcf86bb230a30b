"""Characters to lines: line ends, tabs, overstrikes and attributes resolved."""
