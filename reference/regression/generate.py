"""Regenerates every *-py.json and the CSVs york.csv, r2-trap.csv here.  python3 generate.py   (numpy, scipy; statsmodels for one cross-check)"""
import csv, json, math, sys
import numpy as np, scipy, scipy.optimize as so, scipy.stats as st, scipy.odr as odr
VER = dict(python=sys.version.split()[0], numpy=np.__version__, scipy=scipy.__version__)
def W(o, f): json.dump(o, open(f, 'w'), indent=1, default=lambda v: v.tolist() if hasattr(v, 'tolist') else float(v))
exp, log = np.exp, np.log
M = {'langmuir': (lambda x, a, b: a*b*x/(1+b*x), 2), 'freundlich': (lambda x, a, n: a*x**(1/n), 2), 'pfo': (lambda x, a, k: a*(1-exp(-k*x)), 2), 'pso': (lambda x, a, k: a*a*k*x/(1+a*k*x), 2),
     'sips': (lambda x, a, b, n: a*(b*x)**n/(1+(b*x)**n), 3), 'redlich': (lambda x, a, b, g: a*x/(1+b*x**g), 3), 'elovich': (lambda x, a, b: log(1+a*b*x)/b, 2), 'toth': (lambda x, a, b, n: a*b*x/(1+(b*x)**n)**(1/n), 3)}
def jac(f, x, p):      # complex step: exact to rounding
    return np.stack([np.imag(f(x.astype(complex), *[complex(v, 1e-40) if i == c else v for i, v in enumerate(p)]))/1e-40 for c in range(len(p))], 1)
def fit(f, x, y, p0, free=None, p=None):
    free = list(range(len(p0))) if free is None else free; base = np.array(p0 if p is None else p, float)
    def full(q): z = base.copy(); z[free] = q; return z
    if not free: return base, float(((f(x, *base)-y)**2).sum())
    s = so.least_squares(lambda q: f(x, *full(q))-y, base[free], jac=lambda q: jac(f, x, full(q))[:, free], method='lm', x_scale='jac', xtol=1e-15, ftol=1e-15, gtol=1e-15, max_nfev=5000)
    return full(s.x), 2*s.cost
def profile(f, x, y, p, S0, levels=(.8, .95, .99)):
    """tau(theta)^2 = (S(theta)-S0)/s^2, cut at t; open end -> None when tau has not reached the cut at 1e4 standard errors."""
    n, k = len(x), len(p); s2 = S0/(n-k); J = jac(f, x, p); se = np.sqrt(np.diag(np.linalg.inv(J.T@J))*s2); out = {}
    for L in levels:
        tq = st.t.ppf(.5+L/2, n-k); rows = []
        for i in range(k):
            free = [c for c in range(k) if c != i]; row = []
            for sg in (-1, 1):
                cur = p.copy()
                def tau(th):
                    nonlocal cur
                    z = cur.copy(); z[i] = th; z, S = fit(f, x, y, z, free, z); cur = z; return math.sqrt(max(S-S0, 0)/s2)-tq
                a = p[i]; step = .25*tq*se[i]; b = a+sg*step; v = None
                try:
                    while True:
                        t = tau(b)
                        if t >= 0: v = so.brentq(tau, a, b, xtol=1e-13*abs(p[i])+1e-300, rtol=1e-14); break
                        a = b; step *= 1.3; b += sg*step
                        if p[i] > 0 and b <= 0: b = a*.5
                        if abs(b-p[i]) > 1e4*se[i] or (p[i] > 0 and b < 1e-9*p[i]): break
                except Exception as e: v = None
                row.append(v)
            rows.append(row)
        out['level%g' % L] = dict(tQuantile=tq, limits=rows)
    return out, se
def rd(f): r = list(csv.DictReader(open(f))); return {k: np.array([float(v[k]) if v[k].replace('.', '').replace('-', '').replace('e', '').isdigit() else math.nan for v in r]) for k in r[0]}
def pack(f, x, y, p0):
    p, S = fit(f, x, y, p0); pr, se = profile(f, x, y, p, S); J = jac(f, x, p); U = J/np.linalg.norm(J, axis=0)
    return dict(estimate=p, rss=S, standardError=se, scaledJacobianCondition=np.linalg.cond(U), jacobianCondition=np.linalg.cond(J), profile=pr), p, S
D = json.load(open('synthetic-curves.json')); out = {}
for n, d in D.items():
    out[n], _, _ = pack(M[n][0], np.array(d['x']), np.array(d['y']), d['start'])
pu = list(csv.DictReader(open('puromycin.csv'))); mm = lambda x, V, K: V*x/(K+x)
for s in ('treated', 'untreated'):
    x = np.array([float(r['conc']) for r in pu if r['state'] == s]); y = np.array([float(r['rate']) for r in pu if r['state'] == s]); out['puromycin-'+s], _, _ = pack(mm, x, y, [200, .05])
b = rd('bod.csv'); x, y = b['Time'], b['demand']; out['bod'], p, S = pack(M['pfo'][0], x, y, [20, .5]); s2 = S/4
lin = (x@y)/(x@x); Sl = ((y-lin*x)**2).sum(); Sc = ((y-y.mean())**2).sum()
out['bod'].update(plateauTau_A_to_infinity=math.sqrt((Sl-S)/s2), plateauTau_k_to_infinity=math.sqrt((Sc-S)/s2), note='A -> infinity (k -> 0) tends to the line y = c*x; k -> infinity tends to the constant mean(y). A limit is open (null) when the t quantile exceeds that plateau.')
dn = rd('dnase-run1.csv'); out['dnase-run1'], _, _ = pack(lambda x, A, m, s: A/(1+exp((m-x)/s)), log(dn['conc']), dn['density'], [2.3, 1.5, 1])
W(dict(versions=VER, method='complex-step Jacobian, MINPACK lm at 1e-15, brentq on tau; null = open', fits=out), 'profile-likelihood-py.json')
# ---- residual / wild / case bootstrap with a portable generator
def minstd(seed):
    s = seed
    while True: s = 16807*s % 2147483647; yield s/2147483647
boot = {}
for n in ('langmuir', 'sips'):
    d = D[n]; f = M[n][0]; x, y = np.array(d['x']), np.array(d['y']); p, S = fit(f, x, y, d['start']); ft = f(x, *p); r = y-ft; r = r-r.mean(); g = minstd(20240229); m = len(x); P = []
    for _ in range(2000):
        P.append(fit(f, x, ft+r[[int(next(g)*m) for _ in range(m)]], p)[0])
    P = np.array(P); boot[n] = dict(B=2000, seed=20240229, mean=P.mean(0), sd=P.std(0, ddof=1), q025=np.quantile(P, .025, axis=0), q500=np.quantile(P, .5, axis=0), q975=np.quantile(P, .975, axis=0), first=P[0], last=P[-1])
# wild (Rademacher on leverage-inflated residuals) and case bootstraps of the langmuir set, exact leave-one-out
d = D['langmuir']; f = M['langmuir'][0]; x, y = np.array(d['x']), np.array(d['y']); p, S = fit(f, x, y, d['start']); ft = f(x, *p); J = jac(f, x, p); h = np.diag(J@np.linalg.inv(J.T@J)@J.T); e = y-ft
g = minstd(20240229); P = np.array([fit(f, x, ft+e/(1-h)*np.array([1 if next(g) >= .5 else -1 for _ in x]), p)[0] for _ in range(2000)])
boot['langmuir-wild'] = dict(B=2000, seed=20240229, scheme='y* = fitted + v*e/(1-h), v = +1 if u >= 0.5 else -1', sd=P.std(0, ddof=1), q025=np.quantile(P, .025, axis=0), q975=np.quantile(P, .975, axis=0), first=P[0])
g = minstd(20240229); P, skipped = [], 0
for _ in range(2000):
    ix = [int(next(g)*len(x)) for _ in x]
    if len(set(ix)) < 3: skipped += 1; continue
    P.append(fit(f, x[ix], y[ix], p)[0])
P = np.array(P); boot['langmuir-case'] = dict(B=2000, seed=20240229, skippedFewerThan3DistinctPoints=skipped, sd=P.std(0, ddof=1), q025=np.quantile(P, .025, axis=0), q975=np.quantile(P, .975, axis=0), first=P[0])
loo = {}
for n in ('langmuir', 'sips', 'pso'):
    d = D[n]; f = M[n][0]; x, y = np.array(d['x']), np.array(d['y']); p, S = fit(f, x, y, d['start']); J = jac(f, x, p); h = np.diag(J@np.linalg.inv(J.T@J)@J.T); e = y-f(x, *p); ex, dp = [], []
    for i in range(len(x)):
        k = [c for c in range(len(x)) if c != i]; q = fit(f, x[k], y[k], p)[0]; ex.append(y[i]-f(x[i], *q)); dp.append(q-p)
    s2 = S/(len(x)-len(p)); loo[n] = dict(exactDeletionResiduals=ex, tangentDeletionResiduals=e/(1-h), leverage=h, pressExact=float(np.square(ex).sum()), pressTangent=float(np.square(e/(1-h)).sum()), cooksTangent=e**2*h/(len(p)*s2*(1-h)**2), cooksExact=[float(v@(J.T@J)@v/(len(p)*s2)) for v in dp])
W(dict(versions=VER, sets=loo), 'leave-one-out-py.json')
W(dict(versions=VER, generator='s = 16807*s mod 2147483647; u = s/2147483647; index = floor(u*n); one draw per point in order, resamples one after another', residuals='raw residuals minus their mean, no leverage inflation', quantile='linear interpolation, h = (B-1)*q', start='each refit starts at the estimate', sets=boot), 'bootstrap-py.json')
# ---- straight line with errors in both: Pearson's points with York's weights
X = [0, .9, 1.8, 2.6, 3.3, 4.4, 5.2, 6.1, 6.5, 7.4]; Y = [5.9, 5.4, 4.4, 4.6, 3.5, 3.7, 2.8, 2.8, 2.4, 1.5]; WX = [1000, 1000, 500, 800, 200, 80, 60, 20, 1.8, 1]; WY = [1, 1.8, 4, 8, 20, 20, 70, 70, 100, 500]
with open('york.csv', 'w') as h: h.write('x,y,wx,wy\n'); [h.write('%g,%g,%g,%g\n' % t) for t in zip(X, Y, WX, WY)]
x, y, wx, wy = map(np.array, (X, Y, WX, WY)); bb = np.polyfit(x, y, 1)[0]
for _ in range(200):
    w = wx*wy/(wx+bb*bb*wy); xb, yb = (w@x)/w.sum(), (w@y)/w.sum(); u, v = x-xb, y-yb; be = w*(u/wy+bb*v/wx); nb = (w*be)@v/((w*be)@u)
    if abs(nb-bb) < 1e-16: break
    bb = nb
a = yb-bb*xb; xa = xb+be; xab = (w@xa)/w.sum(); sb = math.sqrt(1/(w@(xa-xab)**2)); sa = math.sqrt(1/w.sum()+xab**2*sb**2); chi = float(w@(y-a-bb*x)**2)
o = odr.ODR(odr.RealData(x, y, sx=1/np.sqrt(wx), sy=1/np.sqrt(wy)), odr.Model(lambda B, x: B[0]+B[1]*x), beta0=[5, -.5], sstol=1e-15, partol=1e-15).run()
def deming(x, y, d):
    sx, sy, sxy = x.var(ddof=1), y.var(ddof=1), np.cov(x, y)[0, 1]; s = (sy-d*sx+math.sqrt((sy-d*sx)**2+4*d*sxy**2))/(2*sxy); return [y.mean()-s*x.mean(), s]
# non-linear, errors in x: langmuir set with 4 % relative sd on x and 2 % on y
L = D['langmuir']; lx, ly = np.array(L['x']), np.array(L['y']); f = M['langmuir'][0]; sx, sy = .04*lx, .02*ly
ol = odr.ODR(odr.RealData(lx, ly, sx=sx, sy=sy), odr.Model(lambda B, x: f(x, *B)), beta0=[85, .065], sstol=1e-15, partol=1e-15, maxit=500).run()
pe = np.array([85, .065])
for _ in range(200):
    dfdx = np.imag(f(lx+1e-40j, *pe))/1e-40; wt = 1/(sy**2+(dfdx*sx)**2); q = so.least_squares(lambda q: np.sqrt(wt)*(f(lx, *q)-ly), pe, jac=lambda q: np.sqrt(wt)[:, None]*jac(f, lx, q), method='lm', xtol=1e-15, ftol=1e-15, gtol=1e-15); dl = np.abs(q.x-pe).max(); pe = q.x
    if dl < 1e-14: break
pw = so.least_squares(lambda q: (f(lx, *q)-ly)/sy, [85, .065], jac=lambda q: jac(f, lx, q)/sy[:, None], method='lm', xtol=1e-15, ftol=1e-15, gtol=1e-15)
W(dict(versions=VER, york=dict(published='York (1966, 1969) and York et al. (2004) give slope -0.480533 and intercept 5.47991 for these points (from memory)', intercept=a, slope=bb, seIntercept=sa, seSlope=sb, chi2=chi, reducedChi2=chi/8, scipyODR=dict(beta=o.beta, sumSquare=o.sum_square, sdBetaScaled=o.sd_beta, covBetaUnscaled=o.cov_beta)),
    deming=dict(data='york.csv x,y unweighted', orthogonal_ratio1=deming(x, y, 1.0), ratio4=deming(x, y, 4.0), ols=list(np.polyfit(x, y, 1)[::-1]), ratio='variance of y error / variance of x error'),
    langmuirErrorsInX=dict(sx='0.04*x', sy='0.02*y', odr=ol.beta, odrSumSquare=ol.sum_square, odrSdScaled=ol.sd_beta, effectiveVarianceIRLS=pe, effectiveVarianceChi2=float((wt*(f(lx, *pe)-ly)**2).sum()), yOnlyWeighted=pw.x)), 'errors-in-variables-py.json')
# ---- robust losses of scipy on the outlier set
yo = ly.copy(); yo[5] *= 1.3; rb = {}
for loss in ('linear', 'huber', 'soft_l1', 'cauchy', 'arctan'):
    s = so.least_squares(lambda q: f(lx, *q)-yo, [85, .065], jac=lambda q: jac(f, lx, q), loss=loss, f_scale=1.0, x_scale='jac', xtol=1e-15, ftol=1e-15, gtol=1e-15, max_nfev=2000); rb[loss] = dict(estimate=s.x, cost=s.cost)
W(dict(versions=VER, f_scale=1.0, x=lx, y=yo, losses=rb), 'robust-langmuir-py.json')
# ---- runs test (exact, Wald-Wolfowitz)
def runs_exact(n1, n2, R):
    C = math.comb; N = C(n1+n2, n1)
    def pm(r): k = r//2; return 2*C(n1-1, k-1)*C(n2-1, k-1)/N if r % 2 == 0 else (C(n1-1, k)*C(n2-1, k-1)+C(n1-1, k-1)*C(n2-1, k))/N
    return sum(pm(r) for r in range(2, R+1)), sum(pm(r) for r in range(R, n1+n2+1)), 2*n1*n2/(n1+n2)+1, 2*n1*n2*(2*n1*n2-n1-n2)/((n1+n2)**2*(n1+n2-1))
W(dict(versions=VER, note='lower tail = too few runs (trend left in the residuals)', cases=[dict(n1=a, n2=b, runs=r, pLower=q[0], pUpper=q[1], mean=q[2], variance=q[3]) for a, b, r in [(4, 4, 2), (5, 5, 3), (4, 6, 3), (6, 6, 3), (3, 5, 2), (10, 10, 6), (4, 4, 8)] for q in [runs_exact(a, b, r)]]), 'runs-test-py.json')
# ---- R^2 trap: uptake that does not change with time, plus scatter; t/q against t still gives R^2 near 1
t = np.array(D['pso']['x']); q = np.array([38.2, 42.9, 39.1, 43.6, 37.4, 41.8, 39.0, 43.1, 38.5, 41.0]); z = t/q; c = np.polyfit(t, z, 1); r2 = 1-((z-np.polyval(c, t))**2).sum()/((z-z.mean())**2).sum(); qe, k2 = 1/c[0], c[0]**2/c[1]; qf = M['pso'][0](t, qe, k2)
with open('r2-trap.csv', 'w') as h: h.write('t,q\n'); [h.write('%g,%g\n' % v) for v in zip(t, q)]
r2q = 1-((q-qf)**2).sum()/((q-q.mean())**2).sum(); rt = np.corrcoef(t, q)[0, 1]
tp = np.array(D['pso']['x']); yp = np.array(D['pso']['y']); zp = tp/yp; cp = np.polyfit(tp, zp, 1)
yf = np.array(D['pfo']['y']); zf = tp/yf; cf = np.polyfit(tp, zf, 1); r2f = 1-((zf-np.polyval(cf, tp))**2).sum()/((zf-zf.mean())**2).sum(); pf, Sf = fit(M['pfo'][0], tp, yf, [40, .05]); pps, Sps = fit(M['pso'][0], tp, yf, [45, .002])
W(dict(versions=VER, trap=dict(linearised=dict(slope=c[0], intercept=c[1], r2=r2, qe=qe, k=k2), r2OnQScale=r2q, correlation_t_q=rt, correlation_p=float(st.pearsonr(t, q)[1])),
    firstOrderDataLookSecondOrder=dict(data='synthetic-curves.json pfo (generated from the first-order law)', r2_t_over_q=r2f, qe_from_line=1/cf[0], firstOrder=dict(p=pf, rss=Sf), secondOrder=dict(p=pps, rss=Sps), deltaAICc_second_minus_first=10*math.log(Sps/Sf))), 'r2-trap-py.json')
# ---- information criteria on one data set, and quantiles
cr = []
for n in ('langmuir', 'sips', 'redlich', 'toth'):
    p, S = fit(M[n][0], lx, ly, {'langmuir': [85, .065], 'sips': [85, .065, 1], 'redlich': [5.5, .065, 1], 'toth': [85, .065, 1]}[n]); N, k = 8, M[n][1]; K = k+1
    cr.append(dict(model=n, k=k, K=K, rss=S, parameters=p, AIC=N*log(S/N)+2*K, AICc=N*log(S/N)+2*K+2*K*(K+1)/(N-K-1), BIC=N*log(S/N)+K*log(N)))
w = np.exp(-.5*(np.array([c['AICc'] for c in cr])-min(c['AICc'] for c in cr))); w /= w.sum()
for c, v in zip(cr, w): c['akaikeWeight'] = v
Fv = (cr[0]['rss']-cr[1]['rss'])/(cr[1]['rss']/5)
W(dict(versions=VER, data='synthetic-curves.json langmuir (n = 8)', convention='K counts the error variance; constants dropped', models=cr, nestedF_langmuir_in_sips=dict(F=Fv, df1=1, df2=5, p=st.f.sf(Fv, 1, 5)), aiccUndefined='AICc needs n > K+1: with K = 4 (three curve parameters) n must be at least 6'), 'criteria-py.json')
W(dict(versions=VER, t=[dict(dof=v, p=q, value=st.t.ppf(q, v)) for v in (1, 2, 3, 4, 5, 6, 8, 10, 30) for q in (.9, .95, .975, .995)], F=[dict(df1=a, df2=b, p=.95, value=st.f.ppf(.95, a, b)) for a in (1, 2, 3) for b in (2, 3, 4, 5, 6, 8, 12)], chi2=[dict(dof=v, p=q, value=st.chi2.ppf(q, v)) for v in (1, 2, 5, 8) for q in (.025, .95, .975)], normal=[dict(p=q, value=st.norm.ppf(q)) for q in (.9, .95, .975, .995)]), 'quantiles-py.json')
