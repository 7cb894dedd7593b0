package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"strconv"
	"strings"

	"tarpside/model/gauge"
	"tarpside/model/sum"
)

// A sumKind is one word behind sums.
type sumKind struct {
	name, words, short, example string
	run                         func(args []string, out io.Writer) error
	keyed                       bool // takes KEY=VALUE, and no options
}

// sums are in the order of the help.
func sums() []sumKind {
	all := []sumKind{
		{"oxygen", "-cylinder D -psi N -flow N [-then PSI@MINUTE]", "minutes left in a cylinder, or the pressure to be ready",
			"tarpline sums oxygen -cylinder D -psi 1950 -flow 15 -then 600@20", sumOxygen, false},
		{"air", "-litres N -full PSI -psi N [-rate N]", "breathing air in stock, and whether to recharge it; never a timer for a crew",
			"tarpline sums air -litres 1240 -full 4500 -psi 3000 -rate 40", sumAir, false},
		{"battery", "-left LEVEL [-full TIME] [-then LEVEL@MINUTE]", "minutes left in a battery, of percent or lit bars",
			"tarpline sums battery -left 90@10 -then 66@22", sumBattery, false},
		{"fuel", "-left LEVEL [-full TIME | -tool TOOL] [-then LEVEL@MINUTE]", "minutes left in a tank",
			"tarpline sums fuel -left 75 -full 3.5h", sumFuel, false},
		{"lift", "-load N -reach N -from N -to N", "the lifting equation for one lift, and the lift marks it proposes",
			"tarpline sums lift -load 46 -reach 14 -from 12 -to 24 -grip fair", sumLift, false},
	}
	for _, t := range trailSums {
		all = append(all, sumKind{t.name, t.words, t.short, t.example, t.run, true})
	}
	return all
}

// sums does one sum.
func (c *call) sums() error {
	if len(c.args) == 0 || helps(c.args[0]) && len(c.args) == 1 {
		return c.explain("sums")
	}
	name, args := c.args[0], c.args[1:]
	if helps(name) {
		name, args = args[0], []string{"-h"}
	}
	for _, s := range sums() {
		if s.name != name {
			continue
		}
		if s.keyed && len(args) > 0 && helps(args[0]) {
			s.explain(c.out, nil)
			return nil
		}
		err := s.run(args, c.out)
		var use usageOf
		if errors.As(err, &use) {
			s.explain(c.out, use.flags)
			return nil
		}
		var wrong misuse
		if errors.As(err, &wrong) && !s.keyed { // those say it themselves
			return misuse(string(wrong) + "; try: tarpline sums help " + name)
		}
		return err
	}
	return misuse(fmt.Sprintf("there is no sum %q; try: tarpline sums help", name))
}

// helps tells whether a word asks for help.
func helps(word string) bool {
	return word == "help" || word == "-h" || word == "-help" || word == "--help"
}

// usageOf is an asking for help.
type usageOf struct{ flags *flag.FlagSet }

func (usageOf) Error() string { return "help was asked for" }

func (s sumKind) explain(out io.Writer, flags *flag.FlagSet) {
	for _, line := range hang("tarpline sums "+s.name+" ", s.words) {
		fmt.Fprintln(out, line)
	}
	fmt.Fprintln(out, s.short)
	if flags != nil {
		explainOptions(out, flags)
	}
	for i, line := range hang("    ", s.example) {
		if i == 0 {
			fmt.Fprint(out, "\nExample\n\n")
		}
		fmt.Fprintln(out, line)
	}
}

func explainOptions(out io.Writer, flags *flag.FlagSet) {
	fmt.Fprint(out, "\nOptions\n\n")
	flags.VisitAll(func(f *flag.Flag) {
		word, usage := flag.UnquoteUsage(f)
		for _, line := range hang(fmt.Sprintf("    %-18s ", strings.TrimSpace("-"+f.Name+" "+word)), usage) {
			fmt.Fprintln(out, line)
		}
	})
}

// An asking is the options of one sum and what was given of them.
type asking struct {
	*flag.FlagSet
	given map[string]bool
}

func ask(name string) *asking {
	a := &asking{FlagSet: flag.NewFlagSet(name, flag.ContinueOnError), given: map[string]bool{}}
	a.SetOutput(io.Discard)
	a.Usage = func() {}
	return a
}

// read takes the options in; those that are needed must be there.
func (a *asking) read(args []string, needed ...string) error {
	err := a.Parse(args)
	switch {
	case errors.Is(err, flag.ErrHelp):
		return usageOf{a.FlagSet}
	case err != nil:
		return misuse(strings.NewReplacer("flag provided but not defined:", "there is no option", "flag needs an argument:",
			"something must stand behind", "invalid value", "it does not understand", "for flag", "behind").Replace(err.Error()))
	case a.NArg() > 0:
		return misuse(fmt.Sprintf("it does not understand %q", a.Arg(0)))
	}
	a.Visit(func(f *flag.Flag) { a.given[f.Name] = true })
	for _, n := range needed {
		if !a.given[n] {
			return misuse("it needs -" + n)
		}
	}
	return nil
}

// number is an option that is a figure, written with or without its unit.
func (a *asking) number(name string, usual float64, usage string, units ...string) *float64 {
	x := usual
	a.Func(name, usage, func(text string) (err error) {
		x, err = amount(text, units...)
		return err
	})
	return &x
}

// amount reads a plain decimal figure; a unit may stand behind it.
func amount(text string, units ...string) (float64, error) {
	s := strings.ToLower(strings.TrimSpace(text))
	for _, u := range units {
		if cut, ok := strings.CutSuffix(s, strings.ToLower(u)); ok && cut != "" {
			s = strings.TrimSpace(cut)
			break
		}
	}
	if s == "" || strings.Trim(s, "0123456789.-") != "" || len(s) > 12 {
		return 0, fmt.Errorf("%.20q is no figure such as 1150 or 0.5", text)
	}
	x, err := strconv.ParseFloat(s, 64)
	switch {
	case err != nil:
		return 0, fmt.Errorf("%.20q is no figure such as 1150 or 0.5", text)
	case x == 0: // -0 is written as 0
		return 0, nil
	}
	return x, nil
}

// atMinute splits READING@MINUTE; without @ it is minute 0.
func atMinute(text string) (reading string, minute float64, err error) {
	reading, at, ok := strings.Cut(text, "@")
	if ok {
		minute, err = amount(at, "min")
	}
	return reading, minute, err
}

// lasting is a time as 210, 210min or 3.5h, in minutes.
func lasting(text string) (float64, error) {
	if cut, ok := strings.CutSuffix(strings.ToLower(strings.TrimSpace(text)), "h"); ok {
		x, err := amount(cut)
		return x * 60, err
	}
	return amount(text, "min")
}

// level is a gauge as 66, 66% or 3/4 lit bars, at a minute.
func level(text string) (gauge.Level, error) {
	reading, minute, err := atMinute(text)
	if err != nil {
		return gauge.Level{}, err
	}
	if lit, of, ok := strings.Cut(reading, "/"); ok {
		n, err := strconv.Atoi(strings.TrimSpace(lit))
		m, err2 := strconv.Atoi(strings.TrimSpace(of))
		if err != nil || err2 != nil {
			return gauge.Level{}, fmt.Errorf("lit bars are written as 3/4, not %.20q", reading)
		}
		return gauge.Bars(minute, n, m)
	}
	x, err := amount(reading, "%")
	return gauge.Percent(minute, x), err
}

// tell writes answers for people.
func tell(out io.Writer, answers ...sum.Answer) error {
	for _, a := range answers {
		for _, text := range a.Lines() {
			body := strings.TrimLeft(text, " ")
			in := len(text) - len(body)
			for i, line := range wrap(body, width-in-4) {
				if i > 0 {
					line = "    " + line
				}
				if _, err := fmt.Fprintln(out, strings.Repeat(" ", in)+line); err != nil {
					return err
				}
			}
		}
	}
	return nil
}
