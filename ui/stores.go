package ui

func newStores(sh *Shell) screen { return newLimits(sh) }
