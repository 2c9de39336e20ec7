namespace Holdfast.Composition;

/// <summary>Standard atomic weights of the elements, g/mol: published, and abridged with its half-width; empty where there is none.</summary>
/// <remarks>CIAAW, standard atomic weights 2024: T. Prohaska et al., Pure Appl. Chem. 94 (2022) 573–600, with the changes of zirconium, gadolinium and lutetium of 2024.</remarks>
internal static class AtomicWeights
{
    /// <summary>The table, comma-separated with a header row.</summary>
    public const string Table =
        """
        z,symbol,name,published,abridged,half_width
        1,H,hydrogen,"[1.00784, 1.00811]",1.0080,0.0002
        2,He,helium,4.002602(2),4.0026,0.0001
        3,Li,lithium,"[6.938, 6.997]",6.94,0.06
        4,Be,beryllium,9.0121831(5),9.0122,0.0001
        5,B,boron,"[10.806, 10.821]",10.81,0.02
        6,C,carbon,"[12.0096, 12.0116]",12.011,0.002
        7,N,nitrogen,"[14.00643, 14.00728]",14.007,0.001
        8,O,oxygen,"[15.99903, 15.99977]",15.999,0.001
        9,F,fluorine,18.998403162(5),18.998,0.001
        10,Ne,neon,20.1797(6),20.180,0.001
        11,Na,sodium,22.98976928(2),22.990,0.001
        12,Mg,magnesium,"[24.304, 24.307]",24.305,0.002
        13,Al,aluminium,26.9815384(3),26.982,0.001
        14,Si,silicon,"[28.084, 28.086]",28.085,0.001
        15,P,phosphorus,30.973761998(5),30.974,0.001
        16,S,sulfur,"[32.059, 32.076]",32.06,0.02
        17,Cl,chlorine,"[35.446, 35.457]",35.45,0.01
        18,Ar,argon,"[39.792, 39.963]",39.95,0.16
        19,K,potassium,39.0983(1),39.098,0.001
        20,Ca,calcium,40.078(4),40.078,0.004
        21,Sc,scandium,44.955907(4),44.956,0.001
        22,Ti,titanium,47.867(1),47.867,0.001
        23,V,vanadium,50.9415(1),50.942,0.001
        24,Cr,chromium,51.9961(6),51.996,0.001
        25,Mn,manganese,54.938043(2),54.938,0.001
        26,Fe,iron,55.845(2),55.845,0.002
        27,Co,cobalt,58.933194(3),58.933,0.001
        28,Ni,nickel,58.6934(4),58.693,0.001
        29,Cu,copper,63.546(3),63.546,0.003
        30,Zn,zinc,65.38(2),65.38,0.02
        31,Ga,gallium,69.723(1),69.723,0.001
        32,Ge,germanium,72.630(8),72.630,0.008
        33,As,arsenic,74.921595(6),74.922,0.001
        34,Se,selenium,78.971(8),78.971,0.008
        35,Br,bromine,"[79.901, 79.907]",79.904,0.003
        36,Kr,krypton,83.798(2),83.798,0.002
        37,Rb,rubidium,85.4678(3),85.468,0.001
        38,Sr,strontium,87.62(1),87.62,0.01
        39,Y,yttrium,88.905838(2),88.906,0.001
        40,Zr,zirconium,91.222(3),91.222,0.003
        41,Nb,niobium,92.90637(1),92.906,0.001
        42,Mo,molybdenum,95.95(1),95.95,0.01
        43,Tc,technetium,,,
        44,Ru,ruthenium,101.07(2),101.07,0.02
        45,Rh,rhodium,102.90549(2),102.91,0.01
        46,Pd,palladium,106.42(1),106.42,0.01
        47,Ag,silver,107.8682(2),107.87,0.01
        48,Cd,cadmium,112.414(4),112.41,0.01
        49,In,indium,114.818(1),114.82,0.01
        50,Sn,tin,118.710(7),118.71,0.01
        51,Sb,antimony,121.760(1),121.76,0.01
        52,Te,tellurium,127.60(3),127.60,0.03
        53,I,iodine,126.90447(3),126.90,0.01
        54,Xe,xenon,131.293(6),131.29,0.01
        55,Cs,caesium,132.90545196(6),132.91,0.01
        56,Ba,barium,137.327(7),137.33,0.01
        57,La,lanthanum,138.90547(7),138.91,0.01
        58,Ce,cerium,140.116(1),140.12,0.01
        59,Pr,praseodymium,140.90766(1),140.91,0.01
        60,Nd,neodymium,144.242(3),144.24,0.01
        61,Pm,promethium,,,
        62,Sm,samarium,150.36(2),150.36,0.02
        63,Eu,europium,151.964(1),151.96,0.01
        64,Gd,gadolinium,157.249(2),157.249,0.002
        65,Tb,terbium,158.925354(7),158.93,0.01
        66,Dy,dysprosium,162.500(1),162.50,0.01
        67,Ho,holmium,164.930329(5),164.93,0.01
        68,Er,erbium,167.259(3),167.26,0.01
        69,Tm,thulium,168.934219(5),168.93,0.01
        70,Yb,ytterbium,173.045(10),173.05,0.02
        71,Lu,lutetium,174.96669(5),174.96669,0.00005
        72,Hf,hafnium,178.486(6),178.49,0.01
        73,Ta,tantalum,180.94788(2),180.95,0.01
        74,W,tungsten,183.84(1),183.84,0.01
        75,Re,rhenium,186.207(1),186.21,0.01
        76,Os,osmium,190.23(3),190.23,0.03
        77,Ir,iridium,192.217(2),192.22,0.01
        78,Pt,platinum,195.084(9),195.08,0.02
        79,Au,gold,196.966570(4),196.97,0.01
        80,Hg,mercury,200.592(3),200.59,0.01
        81,Tl,thallium,"[204.382, 204.385]",204.38,0.01
        82,Pb,lead,"[206.14, 207.94]",207.2,1.1
        83,Bi,bismuth,208.98040(1),208.98,0.01
        84,Po,polonium,,,
        85,At,astatine,,,
        86,Rn,radon,,,
        87,Fr,francium,,,
        88,Ra,radium,,,
        89,Ac,actinium,,,
        90,Th,thorium,232.0377(4),232.04,0.01
        91,Pa,protactinium,231.03588(1),231.04,0.01
        92,U,uranium,238.02891(3),238.03,0.01
        93,Np,neptunium,,,
        94,Pu,plutonium,,,
        95,Am,americium,,,
        96,Cm,curium,,,
        97,Bk,berkelium,,,
        98,Cf,californium,,,
        99,Es,einsteinium,,,
        100,Fm,fermium,,,
        101,Md,mendelevium,,,
        102,No,nobelium,,,
        103,Lr,lawrencium,,,
        104,Rf,rutherfordium,,,
        105,Db,dubnium,,,
        106,Sg,seaborgium,,,
        107,Bh,bohrium,,,
        108,Hs,hassium,,,
        109,Mt,meitnerium,,,
        110,Ds,darmstadtium,,,
        111,Rg,roentgenium,,,
        112,Cn,copernicium,,,
        113,Nh,nihonium,,,
        114,Fl,flerovium,,,
        115,Mc,moscovium,,,
        116,Lv,livermorium,,,
        117,Ts,tennessine,,,
        118,Og,oganesson,,,
        """;
}
