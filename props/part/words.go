package part

// Said is something that a phrase says of the part: a field, and the text that
// Set takes for it.
type Said struct {
	Field Field
	Text  string
}

// choices are the phrases that say one of a field's own words.
var choices = []struct {
	Said
	phrases string
}{
	{Said{FieldCase, string(Tie)}, "tie|tie rod|as a tie|pulled|in tension"},
	{Said{FieldCase, string(Plate)}, "plate|as a plate|like a plate|flat plate"},
	{Said{FieldCase, string(Beam)}, "beam|as a beam|like a beam"},
	{Said{FieldCase, string(FixedBeam)}, "fixed beam|beam of fixed width|beam of given width"},
	{Said{FieldRole, string(Bore)}, "as the bore|as a bore|as a hub|as the hub"},
	{Said{FieldRole, string(Shaft)}, "as the shaft|as a shaft|as a bushing|as the bushing"},
	{Said{FieldPlace, string(Designated)}, "designated area|in a designated area"},
	{Said{FieldPlace, string(Undesignated)}, "undesignated area|in an undesignated area"},
	{Said{FieldSurface, string(Ground)}, "ground surface|surface is ground"},
	{Said{FieldSurface, string(MachinedSurface)}, "machined surface|surface is machined"},
	{Said{FieldSurface, string(HotRolled)}, "hot rolled surface"},
	{Said{FieldSurface, string(Forged)}, "forged surface|as forged"},
	{Said{FieldKeep, string(KeepShape)}, "keep shape|keep the shape|same shape|shape stays"},
	{Said{FieldKeep, string(KeepStiffness)}, "keep stiffness|keep the stiffness|same stiffness|equal stiffness|as stiff as today"},
	{Said{FieldKeep, string(KeepStrength)}, "keep strength|keep the strength|same strength|equal strength|as strong as today"},
}

// facts are the phrases for what the part has and goes through, besides the words
// of the facts themselves.
var facts = []struct {
	fact    Facts
	phrases string
}{
	{PressFit, "press fit|press fits|pressed onto|pressed into|pressed on|pressed in|shrink fit|shrunk on|shrunk onto|interference fit"},
	{Threads, "threaded|tapped|tapped hole|tapped holes|tapped threads"},
	{Sliding, "slides|rubs|sliding contact|bearing surface"},
	{PressureTight, "hold pressure|holds pressure|hold water pressure|holds water pressure|hold air pressure|holds air pressure"},
	{Outdoors, "outdoor|outside|weather"},
	{Weld, "welded|weld repair"},
	{Braze, "brazed|soldered"},
	{Anodize, "anodized|hard anodize|hard anodized|hardcoat"},
	{Electroplate, "electroplated|plated|chrome plated|nickel plated"},
	{PowderCoat, "powder coated|powder coat"},
	{HeatTreat, "heat treated|heat treatment"},
	{Machined, "heavy machining|heavily machined"},
	{RepeatedLoad, "fatigue loading|repeated load|repeated loads|cyclic load|cyclic loading|load cycles"},
	{Impact, "shock load|shock loads|impact load|impact loads"},
	{Vibration, "vibrates|vibrations"},
	{SustainedLoad, "constant load|sustained load"},
	{Compression, "in compression"},
	{TightSize, "close tolerance|close tolerances|tight tolerances"},
	{Crimp, "crimped|riveted|staked"},
	{Electrical, "carries current|shields"},
	{HeatPath, "carries heat|heat path"},
	{Fluid, "carries a fluid|holds a fluid|carries fluid"},
	{SeaWater, "marine|salt spray"},
	{Critical, "safety critical|failure can hurt someone|life critical"},
	{Hazardous, "explosive atmosphere|explosive gas|explosive dust|hazardous area"},
	{ReusePattern, "reuse pattern|same pattern|present pattern|existing pattern"},
}

// SizeWords gives each phrase, in lower case, that names a field of one size.
func SizeWords(yield func(phrases string, f Field) bool) {
	for _, f := range Fields() {
		if said := f.Info().said; said != "" && !yield(said, f) {
			return
		}
	}
}

// SaidWords gives the phrases, in lower case with strokes between them, that say
// something of the part by themselves.
func SaidWords(yield func(phrases string, s Said) bool) {
	for _, c := range choices {
		if !yield(c.phrases, c.Said) {
			return
		}
	}
	for i := range media {
		if m := &media[i]; m.said != "" && !yield(m.said, Said{FieldMedium, m.id}) {
			return
		}
	}
	for _, f := range facts {
		if !yield(f.phrases, Said{FieldWith, f.fact.ID()}) {
			return
		}
	}
}
