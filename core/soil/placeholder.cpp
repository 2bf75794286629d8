namespace burrow {}
