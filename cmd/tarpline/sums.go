package main

import (
	"fmt"
	"strings"
)

// sums does one of the sums, or lists them. They need no department file.
func (c *call) sums() error {
	if len(c.args) == 0 || c.args[0] == "help" {
		for _, s := range trailSums {
			fmt.Fprintf(c.out, "%s %s\n    %s\n    %s\n", s.name, s.words, s.short, s.example)
		}
		return nil
	}
	var names []string
	for _, s := range trailSums {
		if s.name == c.args[0] {
			return s.run(c.args[1:], c.out)
		}
		names = append(names, s.name)
	}
	return fmt.Errorf("no sum is called %q; there are %s", c.args[0], strings.Join(names, ", "))
}
