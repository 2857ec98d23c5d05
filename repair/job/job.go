// Package job is the description of one repair: what was measured, what was
// asked, what is on the shelf. The same structure is the job file (YAML), the
// database's record and the page's form. It holds no results.
//
// # Words
//
// The panel is the piece of hull between its stiffeners. Its long span is x,
// forward positive on either side of the boat, its short span y, up positive,
// and the origin is the panel's centre. Whoever stands outside a port panel has
// forward on his left: measure x towards the bow all the same; drawings and
// templates are turned to what the worker sees. The damage's outline is given
// about its own centre. A laminate is listed from the outside in.
//
// Field tags: `job` is the key, with "required" where it must be given; `min`
// and `max` bound a quantity (inclusive; "over 0 mm" excludes the bound); `one`
// lists the words allowed; `form:"date"` asks for a date; `doc` is the line shown
// to people and editors. On a list or a table they hold for each item.
//
// A field at its zero value counts as left out. So where a field left out stands
// for something else than zero ("25 mm if left out"), its `min` keeps zero out of
// files: a zero typed there would otherwise be read as the default, in silence.
//
// # Reading and writing
//
// Parse reads a file strictly and returns every problem it finds, with its place,
// or a whole Description and none. Marshal writes the canonical file; Hash names
// it. Schema and Manual describe the format, from the same tags.
//
//	d, err := job.Parse("day-launch.yaml", data)
package job

import "scarfwright/physics/si"

// Format is the job-file format this program writes, and the newest it reads.
const Format = 1

// Description is a whole job.
type Description struct {
	Format   int      `job:"format,required" min:"1" doc:"format of this file; this program reads 1"`
	Job      Header   `job:"job,required" doc:"number, title, date"`
	Boat     Boat     `job:"boat,required" doc:"the craft"`
	Panel    Panel    `job:"panel,required" doc:"the panel that is damaged, between its stiffeners"`
	Laminate Laminate `job:"laminate,required" doc:"what the panel is made of, outside to inside"`
	Damage   Damage   `job:"damage,required" doc:"what was found"`
	Site     Site     `job:"site" doc:"where the work is done, and the weather there"`
	Crew     Crew     `job:"crew" doc:"who works, and at which rates"`
	Shelf    Shelf    `job:"shelf,required" doc:"materials and measuring tools at hand, and their prices"`
	Choices  Choices  `job:"choices" doc:"decisions taken by the repairer; each left out is proposed by the tool"`
}

// Header identifies the job.
type Header struct {
	Number   string `job:"number,required" doc:"job number, printed on every sheet"`
	Title    string `job:"title,required" doc:"one line"`
	Date     string `job:"date" form:"date" doc:"date of the survey, year-month-day"`
	Revision string `job:"revision" doc:"revision letter of the description"`
	Yard     string `job:"yard" doc:"who does the work; printed in the title block"`
	Author   string `job:"author" doc:"who measured"`
	Event    string `job:"event" doc:"what happened, as told"`
	Note     string `job:"note" doc:"anything else a reader must know"`
}

// Boat is the craft.
type Boat struct {
	Name         string    `job:"name" doc:"name or hull number"`
	Kind         string    `job:"kind" doc:"in plain words"`
	Length       si.Length `job:"length" min:"1 m" max:"60 m" doc:"length of hull"`
	Waterline    si.Length `job:"waterline" min:"0.5 m" max:"60 m" doc:"length of waterline"`
	Beam         si.Length `job:"beam" min:"0.3 m" max:"20 m" doc:"chine beam, or beam of waterline"`
	Mass         si.Mass   `job:"mass" min:"5 kg" max:"500000 kg" doc:"loaded displacement"`
	Speed        si.Speed  `job:"speed" min:"0 kn" max:"80 kn" doc:"top speed"`
	Deadrise     si.Angle  `job:"deadrise" min:"0 deg" max:"60 deg" doc:"deadrise at the panel"`
	Use          string    `job:"use,required" one:"private|hire|passenger|commercial" doc:"anything but private is referred to the authority first"`
	Keel         string    `job:"keel" one:"none|long|encapsulated|bolted fin|bulb" doc:"keel type; a grounding with a bolted keel is referred"`
	Grounded     string    `job:"grounded" one:"no|yes|denied|unknown" doc:"whether the boat touched the ground"`
	InsuredValue float64   `job:"insured_value" min:"0" max:"1000000000" doc:"insured value in the job's currency"`
}

// Panel is the unsupported piece of hull the damage is in.
type Panel struct {
	Place      string    `job:"place,required" one:"bottom|side|transom|deck|superstructure|other" doc:"where on the boat"`
	Side       string    `job:"side" one:"port|starboard|centre" doc:"which side"`
	Waterline  si.Length `job:"below_waterline" min:"-5 m" max:"5 m" doc:"depth of the damage below the waterline; negative above"`
	Long       si.Length `job:"long,required" min:"50 mm" max:"10 m" doc:"long span, between stiffeners"`
	Short      si.Length `job:"short,required" min:"50 mm" max:"10 m" doc:"short span, between stiffeners"`
	Chord      si.Length `job:"chord" min:"50 mm" max:"2 m" doc:"batten length laid over the place, for the curvature"`
	Sagitta    si.Length `job:"sagitta" min:"0 mm" max:"200 mm" doc:"largest gap under that batten"`
	Edges      Edges     `job:"edges" doc:"what stands at each edge of the panel"`
	Structural string    `job:"structural" one:"yes|no" doc:"whether the panel carries the hull's loads; yes if left out"`
	Features   []Feature `job:"features" doc:"other things the repair must stay clear of, as lines in the panel's own axes"`
	LoadPaths  []string  `job:"load_paths" one:"keel|rudder|chainplate|mast step|engine bed|shaft|sterndrive|transom motor|hull-deck joint|foil|water jet" doc:"load paths the damage touches; each is referred"`
}

// Edges names the four edges, seen from outside.
type Edges struct {
	Fore  string `job:"fore" doc:"at the forward end of the long span"`
	Aft   string `job:"aft" doc:"at the after end"`
	Upper string `job:"upper" doc:"at the upper edge of the short span"`
	Lower string `job:"lower" doc:"at the lower edge"`
}

// Feature is a straight line on the panel: a frame, a chine, a tank's edge.
type Feature struct {
	What string `job:"what,required" doc:"frame, stringer, chine, tank, through-hull ..."`
	From Point  `job:"from,required" doc:"one end, \"x mm, y mm\" from the panel's centre"`
	To   Point  `job:"to,required" doc:"the other end"`
}

// Point is a place on the panel. In a file it is text: "-310 mm, 190 mm".
type Point struct{ X, Y si.Length }

// Laminate is the original lay-up. Either Plies or Thickness is given.
type Laminate struct {
	Known     string    `job:"known" one:"drawing|edge|plug|burn-off|sister hull|guess" doc:"how it was found"`
	Fibre     string    `job:"fibre,required" one:"glass|carbon|aramid|mixed|unknown" doc:"anything but glass is referred"`
	Resin     string    `job:"resin" one:"polyester|vinyl ester|epoxy|unknown" doc:"the original resin"`
	Gelcoat   si.Length `job:"gelcoat" min:"0 mm" max:"3 mm" doc:"gelcoat thickness"`
	Plies     []PlyRef  `job:"plies" doc:"plies of the outer skin, outside to inside, as catalogue classes or with an angle: csm450, wr600, bx600@45"`
	Thickness Range     `job:"thickness" min:"over 0 mm" max:"100 mm" doc:"measured thickness of the structural laminate without gelcoat, when the plies are not known; a range is \"5 mm to 6 mm\" or \"5.4 mm +- 0.5 mm\""`
	Core      *Core     `job:"core" doc:"core, for a sandwich"`
	Inner     []PlyRef  `job:"inner" doc:"plies of the inner skin, core to inside"`
}

// Core is the core of a sandwich.
type Core struct {
	Class     string    `job:"class,required" doc:"catalogue class of the core"`
	Thickness si.Length `job:"thickness,required" min:"3 mm" max:"100 mm" doc:"core thickness"`
}

// PlyRef names a catalogue class of reinforcement and its angle to the panel's
// long span. In a file it is text: "csm450", "wr600@45".
type PlyRef struct {
	Class string
	Angle si.Angle
}

// Range is a low and a high value; Low equals High when there is no spread.
type Range struct{ Low, High si.Length }

// Damage is what was found.
type Damage struct {
	Kind    string    `job:"kind,required" one:"hole|crack|gouge|delamination|scratch|blisters|wet core|fire" doc:"what sort"`
	Seen    *Outline  `job:"seen" doc:"outline of what can be seen"`
	Dead    *Outline  `job:"dead" doc:"outline of the dead area, by tap test; the cut-out follows it"`
	At      Point     `job:"at" doc:"centre of the damage, from the panel's centre; 0, 0 if left out"`
	Margin  si.Length `job:"margin" min:"0 mm" max:"200 mm" doc:"margin cut beyond the dead area; none if left out, as where the outline already is the cut line"`
	Depth   string    `job:"depth,required" one:"gelcoat|partial|through|skin and core" doc:"how deep it goes; a mark that goes deeper has its own depth"`
	Deep    si.Length `job:"deep" min:"over 0 mm" max:"100 mm" doc:"depth at the deepest, for a partial depth"`
	Access  string    `job:"access,required" one:"both|outside|inside" doc:"which faces can be reached"`
	Reach   si.Length `job:"reach" min:"1 mm" max:"5 m" doc:"clear space behind the hole, one-sided access"`
	Marks   []Mark    `job:"marks" doc:"scratches and dings to be filled"`
	Repeat  string    `job:"previous_repair" one:"no|yes|failed" doc:"whether this place was repaired before"`
	Crosses []string  `job:"crosses" doc:"stiffeners the damage itself crosses, in words"`
	Drill   []string  `job:"drill_holes" one:"wet|damp|dry" doc:"what the test holes into the core showed, in order outward"`
	Counts  []int     `job:"blister_counts" min:"0" max:"100000" doc:"blisters in each sample frame"`
	Frame   si.Area   `job:"blister_frame" min:"0 m2" max:"4 m2" doc:"area of one sample frame"`
	Wetted  si.Area   `job:"wetted_area" min:"0 m2" max:"2000 m2" doc:"area the sample stands for"`
}

// Outline is one of four: an ellipse or rectangle by its two widths, a circle by
// its diameter, or points. Corner rounds a rectangle.
type Outline struct {
	Ellipse   []si.Length `job:"ellipse" min:"1 mm" max:"5 m" doc:"[along x, along y] full widths"`
	Rectangle []si.Length `job:"rectangle" min:"1 mm" max:"5 m" doc:"[along x, along y] full widths"`
	Circle    si.Length   `job:"circle" min:"1 mm" max:"5 m" doc:"diameter"`
	Points    []Point     `job:"points" doc:"at least three points, from the damage's centre, in order round the outline"`
	Corner    si.Length   `job:"corner" min:"1 mm" max:"500 mm" doc:"corner radius of the cut; 25 mm if left out"`
}

// Mark is a scratch or a ding in the surface.
type Mark struct {
	Kind  string    `job:"kind,required" one:"scratch|ding" doc:"scratch: opened to a V; ding: a shallow bowl"`
	Long  si.Length `job:"long,required" min:"1 mm" max:"20 m" doc:"length"`
	Wide  si.Length `job:"wide,required" min:"0.1 mm" max:"1 m" doc:"width as opened up"`
	Deep  si.Length `job:"deep,required" min:"0.05 mm" max:"20 mm" doc:"depth as opened up"`
	Count int       `job:"count" min:"1" max:"10000" doc:"how many alike; 1 if left out"`
}

// Site is where the work is done.
type Site struct {
	Place    string      `job:"place" one:"indoors|open shed|hard standing|pontoon|afloat" doc:"shelter"`
	Lag      si.Time     `job:"lag" min:"0 h" max:"48 h" doc:"time constant of the hull's temperature behind the air's"`
	Warmer   si.TempDiff `job:"warmer" min:"0 K" max:"40 K" doc:"how much a tent and heater lift the air, when they are used"`
	Lamp     si.TempDiff `job:"lamp" min:"0 K" max:"60 K" doc:"how much warmer a lamp makes the bare face under it, by thermometer"`
	LampFor  si.Time     `job:"lamp_for" min:"30 min" max:"72 h" doc:"how long the lamp stays on a session once it is laid; 4 h if left out"`
	Days     []Day       `job:"days" doc:"air minimum and maximum and dew point, day by day"`
	HullNow  si.Temp     `job:"hull" min:"-20 °C" max:"60 °C" doc:"hull temperature, by thermometer, when known: in the tent if one is used, beside the lamp"`
	Mix      si.Temp     `job:"mix" min:"-10 °C" max:"50 °C" doc:"temperature of the resin when it is mixed, where it is kept warmer or cooler than the air"`
	Humidity si.Ratio    `job:"humidity" min:"1 %" max:"100 %" doc:"relative humidity of the air"`
	Shore    string      `job:"shoring" doc:"how the boat is held"`
}

// Day is one day's weather. In a file it is a mapping.
type Day struct {
	Min  si.Temp `job:"min,required" min:"-40 °C" max:"55 °C" doc:"night's minimum of the air"`
	Max  si.Temp `job:"max,required" min:"-40 °C" max:"60 °C" doc:"day's maximum of the air"`
	Dew  si.Temp `job:"dew,required" min:"-50 °C" max:"35 °C" doc:"dew point"`
	Rain string  `job:"rain" doc:"hours of rain or wind that stop outdoor work, in words"`
}

// Crew is who works.
type Crew struct {
	People   int                `job:"people" min:"1" max:"20" doc:"people at the laminate; 1 if left out"`
	WetOut   float64            `job:"wet_out" min:"0.2" max:"20" doc:"m2 of ply one person wets out and rolls in an hour; 3 if left out"`
	Rate     float64            `job:"rate" min:"0" max:"1000" doc:"price of an hour, in the job's currency"`
	Hours    map[string]float64 `job:"hours" min:"0" max:"10000" doc:"own hours by step, in place of the tool's rates: survey, strip, taper, form, laminate, other side, fair, gelcoat, polish, refit, record; or one total under all"`
	Currency string             `job:"currency" doc:"sign printed before money; ¤ if left out"`
}

// Shelf is what is there and what it costs.
type Shelf struct {
	Resin     string             `job:"resin,required" doc:"catalogue class, or the name of one of your own sheets"`
	Hardener  string             `job:"hardener" doc:"catalyst or hardener class, where it is a product of its own"`
	Cloth     []string           `job:"cloth" doc:"reinforcements at hand; the design uses only these"`
	Gelcoat   string             `job:"gelcoat" doc:"gelcoat class"`
	Filler    string             `job:"filler" doc:"fairing compound class"`
	Barrier   string             `job:"barrier" doc:"barrier coat class"`
	Stock     []Stock            `job:"stock" doc:"what is left in the tins and on the rolls"`
	Scale     si.Mass            `job:"scale" min:"0.001 g" max:"100 g" doc:"smallest step of the scale"`
	Syringe   si.Volume          `job:"syringe" min:"0.001 ml" max:"10 ml" doc:"graduation of the syringe"`
	Vessel    string             `job:"vessel" one:"cup|foam cup|tray|metal tray" doc:"what is mixed in and left standing in; a plastic or paper cup if left out"`
	Across    si.Length          `job:"vessel_across" min:"30 mm" max:"1 m" doc:"inside diameter of the cup, 75 mm if left out; or length of the tray, 250 mm if left out"`
	Packs     []Pack             `job:"packs" doc:"packs on sale; the catalogue's are used where none is given"`
	Sheets    []Sheet            `job:"sheets" doc:"your own data sheets, typed from the tin; they overlay a class and never change it"`
	Materials float64            `job:"materials" min:"over 0" max:"10000000" doc:"materials at cost as priced by hand; the tool's sum is used if left out"`
	Markup    si.Ratio           `job:"markup" min:"0 %" max:"300 %" doc:"added to materials"`
	Extras    map[string]float64 `job:"extras" min:"0" max:"10000000" doc:"lift, tent, power and the like, by name"`
}

// Stock is what is left of a material.
type Stock struct {
	Class  string    `job:"class,required" doc:"catalogue class"`
	Mass   si.Mass   `job:"mass" min:"0 g" max:"1000 kg" doc:"mass left"`
	Volume si.Volume `job:"volume" min:"0 ml" max:"1000 l" doc:"volume left"`
	Area   si.Area   `job:"area" min:"0 m2" max:"1000 m2" doc:"area left"`
	Lot    string    `job:"lot" doc:"lot number"`
	Age    si.Time   `job:"age" min:"1 h" max:"10000 days" doc:"age of the lot; unknown if left out, and a fresh one is 1 day"`
}

// Pack is a size on sale and its price.
type Pack struct {
	Class  string    `job:"class,required" doc:"catalogue class"`
	Mass   si.Mass   `job:"mass" min:"0 g" max:"1000 kg" doc:"mass in the pack"`
	Volume si.Volume `job:"volume" min:"0 ml" max:"1000 l" doc:"volume in the pack"`
	Area   si.Area   `job:"area" min:"0 m2" max:"1000 m2" doc:"area in the pack"`
	Price  float64   `job:"price,required" min:"0" max:"1000000" doc:"price, in the job's currency"`
}

// Sheet is the user's own data sheet: it overlays the class named by "class".
type Sheet struct {
	Name       string         `job:"name,required" doc:"your own name for it"`
	Class      string         `job:"class,required" doc:"the catalogue class it overlays"`
	Read       string         `job:"read" form:"date" doc:"date the tin or sheet was read"`
	Density    si.Density     `job:"density" min:"0.1 g/ml" max:"3 g/ml" doc:"density of the liquid"`
	PartB      si.Density     `job:"hardener_density" min:"0.1 g/ml" max:"3 g/ml" doc:"density of the hardener or catalyst"`
	DoseLow    si.Ratio       `job:"dose_low" min:"0.1 %" max:"10 %" doc:"least catalyst, by mass of resin"`
	DoseHigh   si.Ratio       `job:"dose_high" min:"0.1 %" max:"10 %" doc:"most catalyst, by mass of resin"`
	PerHundred float64        `job:"hardener_per_100" min:"1" max:"200" doc:"hardener by mass to 100 of resin"`
	HullMin    si.Temp        `job:"hull_min" min:"-10 °C" max:"40 °C" doc:"coldest hull it may be laid on"`
	HullMax    si.Temp        `job:"hull_max" min:"0 °C" max:"60 °C" doc:"warmest hull it may be laid on"`
	PotLife    []PotLife      `job:"pot_life" doc:"working time in a 100 g cup, by temperature and dose"`
	Criterion  string         `job:"pot_criterion" one:"gel|warmed by 25 K|warmed by 30 K|viscosity doubled" doc:"what ends that working time; gel if left out"`
	FilmGel    []FilmTime     `job:"film_gel" doc:"when a thin film gels: it no longer pulls threads"`
	Sandable   []FilmTime     `job:"sandable" doc:"when a thin film can be sanded"`
	Through    []FilmTime     `job:"through" doc:"when a film is cured through; of several the one nearest 20 °C says what that means"`
	Peaks      []Peak         `job:"peak" doc:"cups left standing with a thermometer in them"`
	RecoatFrom si.Time        `job:"recoat_from" min:"1 min" max:"30 days" doc:"at 20 °C, from when the next coat may go on without sanding"`
	RecoatTo   si.Time        `job:"recoat_to" min:"5 min" max:"60 days" doc:"at 20 °C, until when it may go on without sanding"`
	WetPerTurn si.AreaDensity `job:"wet_limit" min:"0.1 kg/m2" max:"30 kg/m2" doc:"most wet laminate in one session"`
}

// Choices are the repairer's decisions. Each left out is proposed by the tool.
type Choices struct {
	Ratio    float64   `job:"ratio" min:"5" max:"50" doc:"taper ratio to one; 12 if left out"`
	Taper    string    `job:"taper" one:"outside|inside|both" doc:"which faces are ground"`
	Order    string    `job:"order" one:"smallest first|largest first" doc:"which ply is laid first"`
	Plies    []PlyRef  `job:"plies" doc:"repair plies, outside to inside; proposed from the shelf if left out"`
	Cover    string    `job:"cover" doc:"class of the cover ply, or \"none\""`
	CoverLap si.Length `job:"cover_lap" min:"1 mm" max:"200 mm" doc:"how far the cover ply laps beyond the taper; 25 mm if left out"`
	Backing  si.Length `job:"backing_lap" min:"10 mm" max:"200 mm" doc:"how far a backing laps beyond the cut-out; 40 mm if left out"`
	Dose     si.Ratio  `job:"catalyst" min:"0.1 %" max:"10 %" doc:"catalyst by mass of resin; the sheet's middle if left out"`
	Waste    si.Ratio  `job:"waste" min:"1 %" max:"200 %" doc:"resin beyond what stays in the laminate; 25 % if left out"`
	Batch    si.Mass   `job:"largest_batch" min:"5 g" max:"20 kg" doc:"largest batch mixed at once; 500 g if left out"`
	Paper    string    `job:"paper" one:"A4|Letter" doc:"paper of the printed sheets"`
	Units    string    `job:"units" one:"metric|us" doc:"units of the printed sheets"`
	Finish   string    `job:"finish" one:"gelcoat|paint|none" doc:"last coat"`
	Heat     string    `job:"heat" one:"none|tent|lamp" doc:"what warms the work: nothing, the tent and heater, or the lamp"`
}

// System returns the units the papers are printed in.
func (c Choices) System() si.System {
	if c.Units == "us" {
		return si.US
	}
	return si.Metric
}
