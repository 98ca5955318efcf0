/* The spreadsheet functions run in the pane's shared runtime, pane.html. Excel asks for this address all the same. */
