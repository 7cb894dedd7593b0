package main

// pin takes a forgotten officer's PIN away.
func (c *call) pin() error {
	if c.args[0] != "clear" {
		return misuse("it is: tarpline pin clear")
	}
	b, err := c.write()
	if err != nil {
		return err
	}
	defer b.Close()
	had, err := b.HasPIN()
	if err != nil {
		return err
	}
	if !had {
		c.lines("No officer's PIN is set. Nothing was changed.")
		return nil
	}
	if err := b.ClearPIN(); err != nil {
		return err
	}
	c.lines("The officer's PIN is taken away. Set a new one in the window, under Settings.")
	return nil
}
