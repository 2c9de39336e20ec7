namespace Holdfast.Safety;

/// <summary>
/// Usual cautions by class of substance or step. Hazard codes are those of the Globally Harmonized System for the example named; a row says whether they were
/// seen on a data sheet. The list reminds and may be wrong or old.
/// </summary>
internal static class CautionTable
{
    /// <summary>
    /// The table, comma-separated with a header row. "formula": elements of which a formula must hold all. "names": beginnings of names in
    /// lower case, formulas that stand by themselves, parts of formulas after a tilde.
    /// </summary>
    public const string Table =
        """
        class,example,formula,names,hazards,signal,advice,status
        amide solvent,"N,N-dimethylformamide",,dimethylformamide|dmf|dimethylacetamide|formamide|methylpyrrolidone,H226 H312 H319 H332 H360D,Danger,"It can harm an unborn child and passes through skin and many gloves. Work in a hood, and never heat it in a sealed vessel beyond its rating.","H312, H319, H332 and reproductive class seen on a data sheet; H226 from memory"
        formic acid,"formic acid, 85 % and above",,formic acid|HCOOH|CH2O2,H226 H290 H302 H314 H331,Danger,"It burns badly. With heat or strong acid it gives carbon monoxide: vent the bottle and use a hood.","H302, H314, H331 and H226 seen on national databases; H290 from memory"
        metal chloride that reacts with water,zirconium tetrachloride,,ZrCl4|HfCl4|zirconium tetrachloride|zirconium chloride|hafnium chloride,H290 H314 EUH014,Danger,It gives hydrogen chloride with water or damp air. Weigh it dry and add it to the liquid slowly in a hood; leave a way out for the gas.,release of hydrogen chloride seen in a registration dossier; codes from memory
        metal chloride that reacts with water,aluminium chloride without water,,AlCl3|aluminium chloride anhydrous,H314,Danger,It gives hydrogen chloride with water or damp air. Weigh it dry and add it to the liquid slowly in a hood.,from memory
        metal chloride that reacts with water,titanium tetrachloride,,TiCl4|SiCl4|SnCl4|titanium tetrachloride|silicon tetrachloride,H314 H330 EUH014,Danger,It fumes in air. Only somebody experienced opens it.,from memory
        metal chloride,iron(III) chloride,Fe Cl,iron(III) chloride|ferric chloride|FeCl3,H290 H302 H315 H317 H318,Danger,It attacks metal and eyes and can sensitise skin.,from memory
        metal chloride,zinc chloride,Zn Cl,zinc chloride,H302 H314 H410,Danger,It burns and is very toxic to life in water: collect the waste.,seen on a supplier's sheet
        strong acid,hydrochloric acid 37 %,,HCl|hydrochloric,H290 H314 H335,Danger,"Acid goes into water, never water into acid. Hood and goggles.",from memory
        strong acid,nitric acid 65 %,,HNO3|nitric acid,H272 H290 H314 H331,Danger,"It oxidises: never let it meet organic matter or solvent waste. Its brown fumes are poisonous.",from memory
        strong acid,sulfuric acid 96 %,,H2SO4|sulfuric|sulphuric,H290 H314,Danger,"It heats up with water: acid goes into water, slowly.",from memory
        hydrofluoric acid,"hydrofluoric acid, any strength",,HF|hydrofluoric,H300 H310 H330 H314,Danger,"Not for this bench. Trained people only, with the antidote at hand.",from memory
        strong base,sodium hydroxide,,NaOH|KOH|LiOH|sodium hydroxide|potassium hydroxide,H290 H314,Danger,It harms eyes within seconds and heats up as it dissolves.,from memory
        strong base,ammonia 25 %,,NH3|NH4OH|ammonia,H290 H314 H335 H400,Danger,Hood. A warm bottle is under pressure. Keep it away from silver.,from memory
        lead salt,lead(II) nitrate,Pb,lead,H302 H332 H318 H317 H360Df H373 H410,Danger,"Poisonous, builds up in the body and can harm an unborn child. No dust; waste apart.",from memory
        cadmium salt,cadmium chloride,Cd,cadmium,H301 H330 H340 H350 H360FD H372 H410,Danger,"Very poisonous and can cause cancer. Buy it as a solution where you can; no dust; waste apart.",from memory
        nickel salt,nickel(II) chloride; the nitrate is an oxidiser too (H272),Ni,nickel,H301 H331 H315 H317 H334 H341 H350i H360D H372 H410,Danger,"Its dust can cause cancer, and it can sensitise skin and airways. Gloves; no dust; waste apart.",from memory
        cobalt salt,cobalt(II) chloride,Co,cobalt,H302 H317 H334 H341 H350i H360F H410,Danger,"Its dust can cause cancer, and it can sensitise skin and airways. Gloves; no dust; waste apart.",from memory
        copper salt,copper(II) sulfate with five waters,Cu,copper,H302 H318 H410,Danger,It harms eyes and is very toxic to life in water: collect the waste.,from memory
        chromium(VI) salt,potassium dichromate,,K2Cr2O7|Na2Cr2O7|K2CrO4|Na2CrO4|CrO3|dichromate|chromate,H272 H301 H312 H330 H314 H317 H334 H340 H350 H360FD H372 H410,Danger,It can cause cancer. Avoid it where you can; keep it from organic matter.,from memory
        chromium salt,chromium(III) nitrate,Cr,chromium,as the supplier's sheet says,,Chromium(III) is the less poisonous form; it may become chromium(VI) when it is oxidised.,common practice
        mercury salt,mercury(II) chloride,Hg,mercury,H300 H314 H341 H361f H372 H410,Danger,It can kill when swallowed; some compounds pass through gloves. Waste apart.,from memory
        silver salt,silver nitrate,Ag,silver,H272 H290 H314 H410,Danger,Never keep it with ammonia: explosive solids form.,from memory
        manganese salt,manganese(II) chloride,Mn,manganese,H301 H318 H373 H411,Danger,"Poisonous when swallowed, and harms eyes.",from memory
        arsenic compound,sodium arsenate,As,arsenic|arsenate|arsenite,as the supplier's sheet says,Danger,Very poisonous and can cause cancer. Acid with a reducing agent can set free a poisonous gas.,common practice
        nitrate,ammonium and alkali nitrates,,nitrate|~NO3,H272,Warning,It oxidises: keep it from organic matter when drying or heating.,from memory
        chelating eluent,disodium EDTA,,EDTA|ethylenediaminetetraacetic|DTPA|NTA,H332 H373,Warning,It keeps metals dissolved: do not put it into waste that is treated by precipitation.,from memory
        fine powder,any dry sorbent powder,,sorbent|powder|nano,not classified as such,,"Treat it as harmful to breathe in: wet it or enclose it, wipe wet, close the waste. A mask (P3) is the last line, not the first.",common practice
        ultraviolet light,254 or 365 nm lamp; spectrometer with its lid open,,ultraviolet|uv lamp|excitation lamp|fluorescence,not a substance,,"Eyes and skin burn without pain at first: interlock or full face shield. Below 240 nm it makes ozone.",common practice
        closed vessel that is heated,liner of an autoclave or capped vial in an oven,,autoclave|hydrothermal|solvothermal|liner,not a substance,,"Fill at most two thirds, stay below the liner's limit, cool it fully before opening. Gas from amides or formic acid raises the pressure.",common practice
        centrifuge,tubes at 4000 to 10000 rpm,,centrifug,not a substance,,"Balance by mass, use rated tubes without cracks, wait for the full stop. Sealed cups for poisonous liquids.",common practice
        furnace,muffle at 400 °C and above,,furnace|muffle|calcin,not a substance,,Dry and drive off solvent first. Nitrates give poisonous fumes: ventilate.,common practice
        flame gases,acetylene and nitrous oxide of a flame spectrometer,,flame|acetylene|nitrous oxide,H220 H270 H280,Danger,"A trained user, flashback arrestors, the drain trap full, no copper line for acetylene, the exhaust on.",from memory
        ionising radiation,X-rays of a diffractometer,,x-ray|powder-diffraction|diffractometer,no class of chemicals,,"Only trained users; interlocks and shutter are never bridged, doors stay closed while the tube is on.",common practice
        cryogen,liquid nitrogen,,liquid nitrogen|nitrogen-sorption|cryogen|liquid argon,H281,Warning,"It takes the place of air and burns by cold: ventilate, and never close the vessel.",from memory
        """;
}
