namespace Holdfast.WaterLimits;

/// <summary>Limits for metals in drinking water and effluents, mg/L. Values change and local codes prevail; each row says whether it was seen.</summary>
internal static class WaterLimitTable
{
    /// <summary>The table, comma-separated with a header row; an empty value says that the scheme sets none.</summary>
    public const string Table =
        """
        element,value_mg_L,scheme,kind,year,water,note,status
        Cu,2,WHO guidelines 4th ed. with 1st and 2nd addenda,guideline value,2022,drinking water,taste and staining can occur below,public digest of the WHO table (checked)
        Pb,0.01,WHO guidelines 4th ed. with 1st and 2nd addenda,provisional guideline value,2022,drinking water,no longer health-based; as low as practicable,public digest of the WHO table (checked)
        Cd,0.003,WHO guidelines 4th ed. with 1st and 2nd addenda,guideline value,2022,drinking water,,public digest of the WHO table (checked)
        Cr,0.05,WHO guidelines 4th ed. with 1st and 2nd addenda,guideline value,2022,drinking water,total chromium,public digest of the WHO table (checked)
        Hg,0.006,WHO guidelines 4th ed. with 1st and 2nd addenda,guideline value,2022,drinking water,inorganic mercury,public digest of the WHO table (checked)
        Mn,0.08,WHO guidelines 4th ed. with 1st and 2nd addenda,provisional guideline value,2022,drinking water,total manganese,public digest of the WHO table (checked)
        As,0.01,WHO guidelines 4th ed. with 1st and 2nd addenda,provisional guideline value,2022,drinking water,,public digest of the WHO table (checked)
        Sb,0.02,WHO guidelines 4th ed. with 1st and 2nd addenda,guideline value,2022,drinking water,,public digest of the WHO table (checked)
        Ba,1.3,WHO guidelines 4th ed. with 1st and 2nd addenda,guideline value,2022,drinking water,,public digest of the WHO table (checked)
        Ni,0.07,WHO guidelines 4th ed. with 1st and 2nd addenda,guideline value,2022,drinking water,,from memory
        Zn,,WHO guidelines 4th ed. with 1st and 2nd addenda,none,2022,drinking water,no health-based value; above 3 mg/L may not be acceptable to consumers,from memory
        Fe,,WHO guidelines 4th ed. with 1st and 2nd addenda,none,2022,drinking water,taste and stains above about 0.3 mg/L,from memory
        Al,,WHO guidelines 4th ed. with 1st and 2nd addenda,none,2022,drinking water,health-derived 0.9 mg/L not set as a guideline; practicable 0.1 to 0.2,from memory
        Ag,,WHO guidelines 4th ed. with 1st and 2nd addenda,none,2022,drinking water,up to 0.1 mg/L tolerable,from memory
        Co,,WHO guidelines 4th ed. with 1st and 2nd addenda,none,2022,drinking water,not listed,from memory
        Cu,1.3,US EPA primary regulations,action level,1991,drinking water,90th percentile at the tap,table in a 2023 paper (checked)
        Pb,0.010,US EPA primary regulations,action level,2024,drinking water,Federal Register 30 Oct 2024; compliance 1 Nov 2027; 0.015 until then,Federal Register abstract (checked); older value from memory
        Cd,0.005,US EPA primary regulations,MCL,1991,drinking water,,table in a 2023 paper (checked); year from memory
        Cr,0.1,US EPA primary regulations,MCL,1991,drinking water,total,table in a 2023 paper (checked); year from memory
        Hg,0.002,US EPA primary regulations,MCL,1991,drinking water,inorganic,table in a 2023 paper (checked); year from memory
        As,0.010,US EPA primary regulations,MCL,2001,drinking water,,table in a 2023 paper (checked); year from memory
        Sb,0.006,US EPA primary regulations,MCL,1992,drinking water,,table in a 2023 paper (checked); year from memory
        Ba,2,US EPA primary regulations,MCL,1991,drinking water,,table in a 2023 paper (checked); year from memory
        Ni,,US EPA primary regulations,none,1995,drinking water,MCL 0.1 was withdrawn,from memory
        Zn,5,US EPA secondary regulations,secondary (taste),1979,drinking water,not enforceable,from memory
        Fe,0.3,US EPA secondary regulations,secondary (taste),1979,drinking water,not enforceable,from memory
        Mn,0.05,US EPA secondary regulations,secondary (taste),1979,drinking water,not enforceable,from memory
        Al,0.05,US EPA secondary regulations,secondary (colour),1991,drinking water,range 0.05 to 0.2,from memory
        Ag,0.10,US EPA secondary regulations,secondary (skin colour),1991,drinking water,not enforceable,from memory
        Cu,1.0,US EPA secondary regulations,secondary (taste),1979,drinking water,not enforceable,from memory
        Cu,2.0,EU Directive 2020/2184,parametric value,2020,drinking water,,same value in 98/83/EC (checked); 2020/2184 from memory
        Pb,0.005,EU Directive 2020/2184,parametric value,2020,drinking water,by 12 Jan 2036; 0.010 until then,agency page on the directive (checked)
        Cd,0.005,EU Directive 2020/2184,parametric value,2020,drinking water,,annex in a public law database (checked)
        Cr,0.025,EU Directive 2020/2184,parametric value,2020,drinking water,by 12 Jan 2036; 0.050 until then,national notices quoting the directive (checked)
        Ni,0.020,EU Directive 2020/2184,parametric value,2020,drinking water,,same value in 98/83/EC (checked); 2020/2184 from memory
        Hg,0.001,EU Directive 2020/2184,parametric value,2020,drinking water,,same value in 98/83/EC (checked); 2020/2184 from memory
        As,0.010,EU Directive 2020/2184,parametric value,2020,drinking water,,annex in a public law database (checked)
        Sb,0.010,EU Directive 2020/2184,parametric value,2020,drinking water,,annex in a public law database (checked)
        Mn,0.05,EU Directive 2020/2184,indicator,2020,drinking water,,same value in 98/83/EC (checked); 2020/2184 from memory
        Fe,0.2,EU Directive 2020/2184,indicator,2020,drinking water,,same value in 98/83/EC (checked); 2020/2184 from memory
        Al,0.2,EU Directive 2020/2184,indicator,2020,drinking water,,same value in 98/83/EC (checked); 2020/2184 from memory
        Cd,0.26,US 40 CFR 433.15 metal finishing (existing sources),monthly average,2007,effluent,any one day 0.69,code text (checked)
        Cd,0.69,US 40 CFR 433.15 metal finishing (existing sources),any one day,2007,effluent,,code text (checked)
        Cr,1.71,US 40 CFR 433.15 metal finishing (existing sources),monthly average,2007,effluent,any one day 2.77; total,code text (checked)
        Cr,2.77,US 40 CFR 433.15 metal finishing (existing sources),any one day,2007,effluent,total,code text (checked)
        Cu,2.07,US 40 CFR 433.15 metal finishing (existing sources),monthly average,2007,effluent,any one day 3.38,code text (checked)
        Cu,3.38,US 40 CFR 433.15 metal finishing (existing sources),any one day,2007,effluent,,code text (checked)
        Pb,0.43,US 40 CFR 433.15 metal finishing (existing sources),monthly average,2007,effluent,any one day 0.69,code text (checked)
        Pb,0.69,US 40 CFR 433.15 metal finishing (existing sources),any one day,2007,effluent,,code text (checked)
        Ni,2.38,US 40 CFR 433.15 metal finishing (existing sources),monthly average,2007,effluent,any one day 3.98,code text (checked)
        Ni,3.98,US 40 CFR 433.15 metal finishing (existing sources),any one day,2007,effluent,,code text (checked)
        Ag,0.24,US 40 CFR 433.15 metal finishing (existing sources),monthly average,2007,effluent,any one day 0.43,code text (checked)
        Ag,0.43,US 40 CFR 433.15 metal finishing (existing sources),any one day,2007,effluent,,code text (checked)
        Zn,1.48,US 40 CFR 433.15 metal finishing (existing sources),monthly average,2007,effluent,any one day 2.61,from memory (row cut off in the text seen)
        Zn,2.61,US 40 CFR 433.15 metal finishing (existing sources),any one day,2007,effluent,,from memory (row cut off in the text seen)
        Pb,0.1,India Environment (Protection) Rules Schedule VI inland surface water,maximum,1986,effluent,public sewer 1.0 (another copy prints 0.1),rule text (checked)
        Cd,2.0,India Environment (Protection) Rules Schedule VI inland surface water,maximum,1986,effluent,public sewer 1.0,rule text (checked)
        Cr,2.0,India Environment (Protection) Rules Schedule VI inland surface water,maximum,1986,effluent,total; hexavalent 0.1,rule text (checked)
        Cu,3.0,India Environment (Protection) Rules Schedule VI inland surface water,maximum,1986,effluent,,rule text (checked)
        Zn,5.0,India Environment (Protection) Rules Schedule VI inland surface water,maximum,1986,effluent,public sewer 15,rule text (checked)
        Ni,3.0,India Environment (Protection) Rules Schedule VI inland surface water,maximum,1986,effluent,,rule text (checked)
        Hg,0.01,India Environment (Protection) Rules Schedule VI inland surface water,maximum,1986,effluent,,rule text (checked)
        Mn,2,India Environment (Protection) Rules Schedule VI inland surface water,maximum,1986,effluent,,trade page quoting the rule (checked)
        Fe,3,India Environment (Protection) Rules Schedule VI inland surface water,maximum,1986,effluent,,trade page quoting the rule (checked)
        """;
}
