### Filled by the part of the program that it is named after.
