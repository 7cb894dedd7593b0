package main

import "fmt"

// stick moves the log from one tablet to another as a file.
func (c *call) stick() error {
	switch path := c.args[1]; c.args[0] {
	case "save":
		b, err := c.look()
		if err != nil {
			return err
		}
		defer b.Close()
		n, err := b.WriteStick(path)
		if err != nil {
			return err
		}
		c.lines(fmt.Sprintf("All %d entries of the log are in %s. Take it in on the other tablet.", n, path))
		return nil
	case "load":
		b, err := c.write()
		if err != nil {
			return err
		}
		defer b.Close()
		t, err := b.TakeStick(path)
		if err != nil {
			return err
		}
		c.lines(t.String())
		return nil
	}
	return misuse("it is: tarpline stick save FILE, or tarpline stick load FILE")
}
