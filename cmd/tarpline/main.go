// Command tarpline is the log from a terminal: everything that the window
// does, for scripts and for those who would rather type. See "tarpline help".
package main

import (
	"bufio"
	"crypto/rand"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"time"

	"tarpside/board"
	"tarpside/board/ledger"
)

// Env is what a run takes from the world around it.
type Env struct {
	Stdin          io.Reader
	Stdout, Stderr io.Writer
	Now            func() time.Time // its zone is that of the clocks in scene files
	Random         io.Reader
	OS             string // as runtime.GOOS
	Getenv         func(string) string
	Terminal       bool // Stdout is one
}

func main() {
	st, err := os.Stdout.Stat()
	env := Env{Stdin: os.Stdin, Stdout: os.Stdout, Stderr: os.Stderr, Now: time.Now, Random: rand.Reader,
		OS: runtime.GOOS, Getenv: os.Getenv, Terminal: err == nil && st.Mode()&os.ModeCharDevice != 0}
	os.Exit(run(os.Args[1:], env))
}

// Exit codes: something went wrong, or the command was not understood.
const (
	failed  = 1
	misused = 2
)

// A misuse is a command that was not understood.
type misuse string

func (m misuse) Error() string { return string(m) }

// run does one command and returns the exit code.
func run(args []string, env Env) int {
	c := &call{Env: env, out: bufio.NewWriter(env.Stdout)}
	err := c.do(args)
	if e := c.out.Flush(); err == nil && e != nil {
		err = fmt.Errorf("the answer could not be written: %w", e)
	}
	var wrong misuse
	switch {
	case err == nil:
		return 0
	case errors.As(err, &wrong):
		fmt.Fprintf(env.Stderr, "tarpline: %s\n", wrong)
		return misused
	}
	fmt.Fprintf(env.Stderr, "tarpline: %s\n", err)
	return failed
}

// A call is one command with its options and words.
type call struct {
	Env
	out   *bufio.Writer
	args  []string
	given map[string]bool // the options that were there

	db, rig, replies, start, dir, by, sheet string
	until                                   int
	csv, dry, replace, help                 bool
}

// flags are the options of all commands; each command takes some of them.
func (c *call) flags() *flag.FlagSet {
	f := flag.NewFlagSet("tarpline", flag.ContinueOnError)
	f.SetOutput(io.Discard)
	f.StringVar(&c.db, "db", "", "`FILE` is the department file; without it the one in your data folder")
	f.BoolVar(&c.csv, "csv", false, "print the table as CSV")
	f.StringVar(&c.rig, "rig", "", "`RIG` is the rig's id, such as R41")
	f.IntVar(&c.until, "until", 0, "log rows up to this `MINUTE`, and no later ones")
	f.StringVar(&c.replies, "replies", "", "write the reply to each row to `OUT.csv`, or with - to the screen")
	f.StringVar(&c.start, "start", "", "`TIME` of minute 0, as 2026-11-25T18:50:00-05:00")
	f.StringVar(&c.dir, "out", "", "write into the folder `DIR`")
	f.StringVar(&c.sheet, "paper", "letter", "`SIZE` of the paper: letter or a4")
	f.StringVar(&c.by, "by", "", "`MEMBER` who makes the change, such as M02")
	f.BoolVar(&c.dry, "dry", false, "say what would change, and change nothing")
	f.BoolVar(&c.replace, "replace", false, "move the file that is there aside, and keep it")
	f.BoolVar(&c.help, "h", false, "explain the command")
	f.BoolVar(&c.help, "help", false, "explain the command")
	return f
}

// parse splits options and words, which may come in any order; after -- all
// are words.
func (c *call) parse(args []string) error {
	f := c.flags()
	for {
		if err := f.Parse(args); err != nil {
			text := strings.Replace(err.Error(), "flag provided but not defined:", "there is no option", 1)
			text = strings.Replace(text, "flag needs an argument:", "something must stand behind", 1)
			return misuse(text + "; try: tarpline help")
		}
		rest := f.Args()
		if len(rest) == 0 {
			break
		}
		if n := len(args) - len(rest); n > 0 && args[n-1] == "--" {
			c.args = append(c.args, rest...)
			break
		}
		c.args, args = append(c.args, rest[0]), rest[1:]
		if cmd := find(c.args[0]); cmd != nil && cmd.own() {
			c.args = append(c.args, args...)
			break
		}
	}
	c.given = map[string]bool{}
	f.Visit(func(o *flag.Flag) { c.given[o.Name] = true })
	return nil
}

func (c *call) do(args []string) error {
	if err := c.parse(args); err != nil {
		return err
	}
	if len(c.args) == 0 {
		if c.help {
			return c.explain("")
		}
		fmt.Fprint(c.Stderr, overview())
		return misuse("what shall it do?")
	}
	name := c.args[0]
	c.args = c.args[1:]
	if name == "help" {
		return c.explain(strings.Join(c.args[:min(1, len(c.args))], ""))
	}
	cmd := find(name)
	switch {
	case cmd == nil:
		return misuse(fmt.Sprintf("there is no command %q; try: tarpline help", name))
	case c.help:
		return c.explain(name)
	}
	for o := range c.given {
		if o != "db" && !cmd.takes(o) {
			return misuse(fmt.Sprintf("%s does not take -%s; try: tarpline help %s", name, o, name))
		}
	}
	if len(c.args) < cmd.least || !cmd.own() && len(c.args) > cmd.most {
		return misuse(fmt.Sprintf("it is: tarpline %s; for more: tarpline help %s", cmd.usage(), name))
	}
	return cmd.run(c)
}

// file is the department file of the call.
func (c *call) file() (string, error) {
	if c.given["db"] && c.db != "" {
		return c.db, nil
	}
	return board.DepartmentFile(c.OS, c.Getenv)
}

func (c *call) options(readOnly bool) board.Options {
	return board.Options{Now: c.Now, Random: c.Random, Ledger: ledger.Options{ReadOnly: readOnly}}
}

// look opens the department file for reading. Another program may write it
// at the same time.
func (c *call) look() (*board.Board, error) {
	path, err := c.file()
	if err != nil {
		return nil, err
	}
	if _, err := os.Stat(path); errors.Is(err, os.ErrNotExist) {
		return nil, fmt.Errorf("there is no department file %s yet. Nothing was made. To make it of your tables: tarpline stores load DIR; "+
			"to see how it works without one: tarpline demo", path)
	}
	b, err := board.Open(path, c.options(true))
	if err == nil {
		c.warnBehind(b)
	}
	return b, err
}

// write opens the department file for writing, and makes it if need be.
func (c *call) write() (*board.Board, error) {
	path, err := c.file()
	if err != nil {
		return nil, err
	}
	if !c.given["db"] {
		if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
			return nil, fmt.Errorf("your data folder cannot be used: %w. Nothing was made; name a file with -db", err)
		}
	}
	b, err := board.Open(path, c.options(false))
	if err != nil {
		return nil, err
	}
	if why := b.Picture().ReadOnly; why != "" {
		return nil, errors.Join(fmt.Errorf("nothing was changed. %s", why), b.Close())
	}
	c.warnBehind(b)
	return b, nil
}

// warnBehind says that the clock stands before the last entry.
func (c *call) warnBehind(b *board.Board) {
	if d := b.Picture().Behind; d > 0 {
		fmt.Fprintf(c.Stderr, "tarpline: this computer's clock is %s behind the last entry of the log. All that was logged is safe and "+
			"keeps its order; what is logged now comes after it and keeps both times. Set the clock, if it is the one that is wrong.\n",
			span(d))
	}
}

// span is a duration in words, to the minute.
func span(d time.Duration) string {
	minutes := int(d.Round(time.Minute) / time.Minute)
	switch h, m := minutes/60, minutes%60; {
	case h == 0:
		return fmt.Sprintf("%d min", m)
	case h >= 48:
		return fmt.Sprintf("%d days", h/24)
	case m == 0:
		return fmt.Sprintf("%d h", h)
	default:
		return fmt.Sprintf("%d h %d min", h, m)
	}
}
