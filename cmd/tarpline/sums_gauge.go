package main

import (
	"io"
	"strings"

	"tarpside/model/gauge"
)

// cylinder are the options that say which cylinder it is.
func (a *asking) cylinder() func() (gauge.Cylinder, error) {
	name := a.String("cylinder", "", "`SIZE` is D, E, M, G, H or K")
	litres := a.number("litres", 0, "`N` litres that a cylinder of another size holds when full", "litres", "l")
	full := a.number("full", 0, "`PSI` at which it is full", "psi")
	return func() (gauge.Cylinder, error) {
		switch sized := a.given["litres"] || a.given["full"]; {
		case a.given["cylinder"] && sized:
			return gauge.Cylinder{}, misuse("-cylinder is for a size of the table, -litres and -full are for another; not both")
		case sized:
			return gauge.Sized(*litres, *full)
		case !a.given["cylinder"]:
			return gauge.Cylinder{}, misuse("it needs -cylinder, or -litres and -full")
		}
		return gauge.Named(*name)
	}
}

func sumOxygen(args []string, out io.Writer) error {
	a := ask("oxygen")
	which := a.cylinder()
	flow := a.number("flow", 0, "`N` L/min as set", "l/min")
	keep := a.number("keep", gauge.Residual, "`PSI` kept back; without it 200", "psi")
	last := a.number("for", gauge.ReadyFor, "`MIN` that it must last, with -ready; without it 15", "min")
	ready := a.Bool("ready", false, "the pressure it must show to give -flow (without it 10 L/min) for so long")
	var readings []gauge.Pressure
	add := func(text string) error {
		reading, minute, err := atMinute(text)
		if err != nil {
			return err
		}
		psi, err := amount(reading, "psi")
		readings = append(readings, gauge.Pressure{Min: minute, PSI: psi})
		return err
	}
	a.Func("psi", "`PSI` that the gauge shows; PSI@MINUTE if not minute 0", add)
	a.Func("then", "`PSI@MINUTE` of a later reading; may stand more than once", add)
	if err := a.read(args); err != nil {
		return err
	}
	c, err := which()
	if err != nil {
		return err
	}
	if *ready {
		if !a.given["flow"] {
			*flow = gauge.ReadyFlow
		}
		answer, err := gauge.Ready(c, *flow, *last, *keep)
		if err != nil {
			return err
		}
		return tell(out, answer)
	}
	switch {
	case !a.given["psi"]:
		return misuse("it needs -psi, what the gauge shows")
	case !a.given["flow"] && len(readings) < 2:
		return misuse("it needs -flow, or a second reading with -then")
	}
	left, err := gauge.Oxygen{Cylinder: c, Flow: *flow, Keep: *keep, Readings: readings}.Left()
	if err != nil {
		return err
	}
	return tell(out, left.Answer)
}

func sumAir(args []string, out io.Writer) error {
	a := ask("air")
	litres := a.number("litres", 0, "`N` litres that it holds when full", "litres", "l")
	full := a.number("full", 0, "`PSI` at which it is full, by its maker", "psi")
	psi := a.number("psi", 0, "`PSI` that the gauge shows", "psi")
	rate := a.number("rate", 0, "`N` L/min: what the stock is worth in minutes (rated 40, hard work 60 to 100)", "l/min")
	alarm := a.number("alarm", gauge.AlarmAt*100, "`N` percent at which it sounds; without it 33", "%")
	if err := a.read(args, "litres", "full", "psi"); err != nil {
		return err
	}
	stock, err := gauge.Air{Litres: *litres, FullPSI: *full, PSI: *psi, Rate: *rate, Alarm: *alarm / 100}.Stock()
	if err != nil {
		return err
	}
	return tell(out, stock.Answer)
}

func sumBattery(args []string, out io.Writer) error {
	return sumRun(gauge.Battery, "battery", args, out)
}

func sumFuel(args []string, out io.Writer) error { return sumRun(gauge.Fuel, "fuel", args, out) }

// sumRun is a battery or a tank.
func sumRun(kind gauge.Kind, name string, args []string, out io.Writer) error {
	a, r := ask(name), gauge.Run{Kind: kind, Floor: kind.Floor()}
	add := func(text string) error {
		l, err := level(text)
		r.Levels = append(r.Levels, l)
		return err
	}
	a.Func("left", "`LEVEL` as 66, 66% or 3/4 lit bars; LEVEL@MINUTE if not minute 0", add)
	a.Func("then", "`LEVEL@MINUTE` of a later reading; may stand more than once", add)
	floor := a.number("stop", r.Floor, "`N` percent at which to change or refill; without it 20, for fuel 10", "%")
	a.Func("full", "`TIME` from full to empty at this work, as 40min or 3.5h", func(text string) error {
		x, err := lasting(text)
		r.Table = gauge.Figure(x)
		return err
	})
	if kind == gauge.Fuel {
		a.Func("tool", "`TOOL` whose typical time is taken, from memory: "+strings.Join(gauge.Tools(), ", "), func(text string) (err error) {
			r.Table, err = gauge.Typical(text)
			return err
		})
	} else {
		a.Func("temp", "`F` degrees Fahrenheit: below freezing, cold takes 20 to 40% off", func(text string) error {
			x, err := amount(text, "f")
			if err != nil {
				return err
			}
			r.Cold, err = gauge.ColdAt(x)
			return err
		})
		a.Func("derate", "`N` percent that cold takes off, if you know it", func(text string) error {
			x, err := amount(text, "%")
			r.Cold = gauge.Derate{Low: x, High: x}
			return err
		})
	}
	if err := a.read(args, "left"); err != nil {
		return err
	}
	if a.given["full"] && a.given["tool"] || a.given["temp"] && a.given["derate"] {
		return misuse("of -full and -tool, and of -temp and -derate, it takes one")
	}
	r.Floor = *floor
	left, err := r.Left()
	if err != nil {
		return err
	}
	return tell(out, left.Answer)
}
