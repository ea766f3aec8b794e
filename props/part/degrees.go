package part

import (
	"fmt"

	"alongside/units"
)

// hottest is beyond every temperature at which a casting serves, in °C: all
// casting metals are molten there.
const hottest = 4000 - 273.15

// Temperatures reads one temperature, or the two ends of a range, as °C; assume
// is the unit where none is typed. A limit ("≥ 300 °F") and what is below absolute
// zero, which units refuse, or where every metal is molten are errors.
func Temperatures(typed string, assume units.Unit) ([2]float64, error) {
	q, err := units.ParseAs(typed, units.Temperature, assume)
	if err != nil {
		return [2]float64{}, err
	}
	at := [2]float64{units.DegC.FromSI(q.Unit.ToSI(q.Lo)), units.DegC.FromSI(q.Unit.ToSI(q.Hi))}
	problem := ""
	switch {
	case q.Qual != units.Exact:
		problem = "a limit is not a temperature; leave " + q.Qual.String() + " out"
	case at[0] > at[1]:
		problem = "type the colder temperature first"
	case at[1] > hottest:
		problem = "every casting metal is molten there"
	}
	if problem != "" {
		return at, fmt.Errorf("%q: %s", typed, problem)
	}
	return at, nil
}

// Temperature reads one temperature as °C, as Temperatures does.
func Temperature(typed string, assume units.Unit) (float64, error) {
	at, err := Temperatures(typed, assume)
	if err == nil && at[0] != at[1] {
		err = fmt.Errorf("%q: one temperature is needed, not a range", typed)
	}
	return at[0], err
}

// TemperatureRange reads the two ends of a range as °C, as Temperatures does.
func TemperatureRange(typed string, assume units.Unit) ([2]float64, error) {
	at, err := Temperatures(typed, assume)
	if err == nil && at[0] == at[1] {
		err = fmt.Errorf("%q: two temperatures are needed, the colder first", typed)
	}
	return at, err
}
