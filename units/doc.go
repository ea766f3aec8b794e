// Package units holds the dimensions, units and quantities of a metal property
// table: it reads what people type and paste, converts, and rounds as honestly
// as the figure was written.
//
// A Quantity keeps the digits of its source. Converted, it keeps its full value
// and shows the digits that NIST SP 811 (2008) B.7.1 allows: 37 ksi is 255 MPa,
// not 255.106. Rounding sends ties to the even digit (ASTM E29). Two departures
// from B.7.1 are deliberate: a temperature keeps its resolution (68 °F is 20 °C),
// and a length, area, volume or mass shows at least three digits.
//
// Factors come from NIST SP 811 (2008) Appendix B, and %IACS from IEC 60028
// (100 %IACS is 58.0 MS/m at 20 °C). Handbooks often write cal and Btu without
// saying which: here, by convention, an unmarked cal is thermochemical (4.184 J,
// so 1 cal/cm·s·°C is 418.4 W/m·K) and an unmarked Btu is of the International
// Table (1055.056 J). The kinds differ by 0.07 %. Write cal(IT) or Btu(th) for
// the others.
//
// A temperature below absolute zero is refused when read and when converted;
// Quantity.Possible asks for one that came from elsewhere.
//
// # Adding a unit
//
// A unit is a constant at the end of list.go (its number is in compiled data, so
// none may move) and a row in table.go, keyed by the constant:
//
//   - dim, the factor to SI as num over den, symbol as shown, ascii where that
//     differs. Write an exact factor from constants.go (num: pound, den: inch *
//     inch * inch), never a rounded product. A resistivity has recip: true, a
//     temperature scale its zero, a unit that lists should not show rare: true.
//   - spell holds other expressions that mean the unit, separated by |. Factors come
//     in any order with any separators, so W/m·K, W/(m K) and W m⁻¹ K⁻¹ need one.
//   - A new word goes into words.go, marked with = where its case matters; a
//     character with a plain equivalent into the folds of text.go.
//   - Where one spelling fits several dimensions (lb, %, °F), the unit whose own
//     name it is comes first, then the order of the constants; ParseAs with a
//     dimension picks the right one.
//
// Tests: the factor with its source in factors_test.go, the unit in the words of
// GNU units in gnu_test.go, spellings in parse_unit_test.go, published pairs of
// figures in testdata/units/checks.csv; then the fuzz targets FuzzParse and
// FuzzParseUnit.
//
// A new dimension is a constant and a row with its name and display units in
// dimension.go. A hardness scale is a dimension of its own with one unit; BrinellUnit
// finds a Brinell load by its symbol.
//
// # What the package cannot catch
//
//   - Energy and torque have the same units: N·m and ft·lbf are read as energy.
//   - N/mm² as a strength and as a Brinell or Vickers pressure look the same.
//   - An expansion coefficient per °F written as per °C, or the other way round,
//     is off by a factor of 1.8 and still looks like a metal.
//   - A figure printed with the other kind of calorie or Btu is off by 0.07 %.
//   - The Brinell load is known only if it is written. A Vickers or Knoop load is
//     not kept: HV 10 and HV 30 are both read as HV.
//   - A mean expansion coefficient belongs to a range of temperature, and %IACS
//     to 20 °C; a conversion knows neither.
//   - "nm" is a nanometer; a torque wants its capital N, N·m or Nm.
//   - 10 300 ksi is ten thousand and more, also where two columns were pasted.
//   - "lb" alone is a mass unless a force is asked for, "°F" a point on the scale
//     unless a difference is, "%" a percentage unless a length per length is.
//   - 1,125 is read as a thousand and more, not as 1.125 with a decimal comma;
//     only commas that cannot group thousands are refused.
//   - Whether the last zeros of 3000 were meant. By rule they were not.
//   - A range has one Place: 7.4–7.45 is shown as 7.40–7.45.
package units
