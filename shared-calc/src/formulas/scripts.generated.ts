// @ts-nocheck: plain JavaScript, written by "npm run formulas" from the formulas of each chapter; do not edit.
// biome-ignore-all lint: nobody reads it as code of ours
// biome-ignore-all format: one line a formula
// biome-ignore-all assist: as written
import {
  countOf,
  largest,
  meanOf,
  negativeMean,
  normalShare,
  normalValue,
  positiveMean,
  roundTo,
  smallest,
  studentShare,
  studentT,
  toLimit,
} from '../engine/evaluate/functions.js'
import type { Script } from '../engine/index.js'

export const scripts: Readonly<Record<string, Script>> = {
  "Barometric pressure from altitude": {
    constants: ["p_0","a_h","b_h"],
    inputs: "h",
    steps: [
      ["p_h","p_0*(1 - a_h*h)^b_h"],
    ],
    run: (scalars) => {
      const $p_0 = scalars[0]
      const $a_h = scalars[1]
      const $b_h = scalars[2]
      const $h = scalars[3]
      const $p_h = ($p_0 * ((1 - ($a_h * $h)) ** $b_h))
      scalars[4] = $p_h
    },
  },
  "Density of moist air": {
    constants: ["T_z","R_d","k_v","a_v","b_v","c_v"],
    inputs: "theta phi p_bar",
    steps: [
      ["T","theta + T_z"],
      ["p_v","phi*exp(a_v - b_v/T - c_v*log(T))"],
      ["rho","(p_bar - k_v*p_v)/(R_d*T)"],
    ],
    run: (scalars) => {
      const $T_z = scalars[0]
      const $R_d = scalars[1]
      const $k_v = scalars[2]
      const $a_v = scalars[3]
      const $b_v = scalars[4]
      const $c_v = scalars[5]
      const $theta = scalars[6]
      const $phi = scalars[7]
      const $p_bar = scalars[8]
      const $T = ($theta + $T_z)
      scalars[9] = $T
      const $p_v = ($phi * Math.exp((($a_v - ($b_v / $T)) - ($c_v * Math.log($T)))))
      scalars[10] = $p_v
      const $rho = (($p_bar - ($k_v * $p_v)) / ($R_d * $T))
      scalars[11] = $rho
    },
  },
  "Zero-flow pressure": {
    constants: [],
    inputs: "dp_z[]",
    steps: [
      ["dp_m0","mean(dp_z)"],
      ["dp_plus","positive_mean(dp_z)"],
      ["dp_minus","negative_mean(dp_z)"],
    ],
    run: (scalars, columns, rows) => {
      const $dp_z = columns[0]
      const $dp_m0 = meanOf($dp_z)
      scalars[0] = $dp_m0
      const $dp_plus = positiveMean($dp_z)
      scalars[1] = $dp_plus
      const $dp_minus = negativeMean($dp_z)
      scalars[2] = $dp_minus
    },
  },
  "Flow through the device": {
    constants: [],
    inputs: "dp_d[] c_d[] m_d[] rho_cal rho_d",
    steps: [
      ["q_d[]","c_d .* abs(dp_d) .^ m_d * sqrt(rho_cal/rho_d)"],
    ],
    run: (scalars, columns, rows) => {
      const $dp_d = columns[0]
      const $c_d = columns[1]
      const $m_d = columns[2]
      const $rho_cal = scalars[0]
      const $rho_d = scalars[1]
      const $q_d = []
      columns[3] = $q_d
      for (let i = 0; i < rows; i += 1) {
        $q_d.push((($c_d[i] * (Math.abs($dp_d[i]) ** $m_d[i])) * Math.sqrt(($rho_cal / $rho_d))))
      }
    },
  },
  "Flow of standard air for the device pressure": {
    constants: ["rho_0"],
    inputs: "dp_d[] c_d[] m_d[] rho_cal",
    steps: [
      ["q_d[]","c_d .* abs(dp_d) .^ m_d * sqrt(rho_cal/rho_0)"],
    ],
    run: (scalars, columns, rows) => {
      const $rho_0 = scalars[0]
      const $dp_d = columns[0]
      const $c_d = columns[1]
      const $m_d = columns[2]
      const $rho_cal = scalars[1]
      const $q_d = []
      columns[3] = $q_d
      for (let i = 0; i < rows; i += 1) {
        $q_d.push((($c_d[i] * (Math.abs($dp_d[i]) ** $m_d[i])) * Math.sqrt(($rho_cal / $rho_0))))
      }
    },
  },
  "Flow through the device, typed for reference air": {
    constants: [],
    inputs: "q_s[] rho_cal rho_d",
    steps: [
      ["q_t[]","q_s*sqrt(rho_cal/rho_d)"],
    ],
    run: (scalars, columns, rows) => {
      const $q_s = columns[0]
      const $rho_cal = scalars[0]
      const $rho_d = scalars[1]
      const $q_t = []
      columns[1] = $q_t
      for (let i = 0; i < rows; i += 1) {
        $q_t.push(($q_s[i] * Math.sqrt(($rho_cal / $rho_d))))
      }
    },
  },
  "Flow of standard air, typed for reference air": {
    constants: ["rho_0"],
    inputs: "q_s[] rho_cal",
    steps: [
      ["q_t[]","q_s*sqrt(rho_cal/rho_0)"],
    ],
    run: (scalars, columns, rows) => {
      const $rho_0 = scalars[0]
      const $q_s = columns[0]
      const $rho_cal = scalars[1]
      const $q_t = []
      columns[1] = $q_t
      for (let i = 0; i < rows; i += 1) {
        $q_t.push(($q_s[i] * Math.sqrt(($rho_cal / $rho_0))))
      }
    },
  },
  "Flow of standard air, typed for the air in the device": {
    constants: ["rho_0"],
    inputs: "q_s[] rho_d",
    steps: [
      ["q_t[]","q_s*sqrt(rho_d/rho_0)"],
    ],
    run: (scalars, columns, rows) => {
      const $rho_0 = scalars[0]
      const $q_s = columns[0]
      const $rho_d = scalars[1]
      const $q_t = []
      columns[1] = $q_t
      for (let i = 0; i < rows; i += 1) {
        $q_t.push(($q_s[i] * Math.sqrt(($rho_d / $rho_0))))
      }
    },
  },
  "Air the typed flows are stated for": {
    constants: ["rho_0"],
    inputs: "rho_cal rho_d",
    steps: [
      ["f_r","sqrt(rho_cal/rho_d) - 1"],
      ["f_a","sqrt(rho_d/rho_0) - 1"],
    ],
    run: (scalars) => {
      const $rho_0 = scalars[0]
      const $rho_cal = scalars[1]
      const $rho_d = scalars[2]
      const $f_r = (Math.sqrt(($rho_cal / $rho_d)) - 1)
      scalars[3] = $f_r
      const $f_a = (Math.sqrt(($rho_d / $rho_0)) - 1)
      scalars[4] = $f_a
    },
  },
  "Flow of several devices": {
    constants: [],
    inputs: "q_j[]",
    steps: [
      ["q_m","sum(q_j)"],
    ],
    run: (scalars, columns, rows) => {
      const $q_j = columns[0]
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += $q_j[i]
      const $q_m = sum1
      scalars[0] = $q_m
    },
  },
  "Flow of air at 0 °C as a flow of reference air": {
    constants: ["T_z"],
    inputs: "q_N theta_r",
    steps: [
      ["f_N","(theta_r + T_z)/T_z"],
      ["q_r","q_N*f_N"],
    ],
    run: (scalars) => {
      const $T_z = scalars[0]
      const $q_N = scalars[1]
      const $theta_r = scalars[2]
      const $f_N = (($theta_r + $T_z) / $T_z)
      scalars[3] = $f_N
      const $q_r = ($q_N * $f_N)
      scalars[4] = $q_r
    },
  },
  "Leakage curve": {
    constants: [],
    inputs: "dp_m[] q_m[] sign dp_01 dp_02 rho_d rho_x",
    steps: [
      ["dp_0","(dp_01 + dp_02)/2"],
      ["dp[]","sign*(dp_m - dp_0)"],
      ["q_env[]","q_m*(rho_d/rho_x)"],
      ["x[]","log(dp)"],
      ["y[]","log(q_env)"],
      ["N","count(x)"],
      ["xbar","mean(x)"],
      ["ybar","mean(y)"],
      ["S_xx","sum((x - xbar) .^ 2)/(N - 1)"],
      ["S_yy","sum((y - ybar) .^ 2)/(N - 1)"],
      ["S_xy","sum((x - xbar) .* (y - ybar))/(N - 1)"],
      ["n","S_xy/S_xx"],
      ["lnC","ybar - n*xbar"],
      ["C_env","exp(lnC)"],
      ["r_2","S_xy^2/(S_xx*S_yy)"],
      ["q_fit[]","C_env*dp .^ n"],
      ["e[]","y - lnC - n*x"],
    ],
    run: (scalars, columns, rows) => {
      const $dp_m = columns[0]
      const $q_m = columns[1]
      const $sign = scalars[0]
      const $dp_01 = scalars[1]
      const $dp_02 = scalars[2]
      const $rho_d = scalars[3]
      const $rho_x = scalars[4]
      const $dp_0 = (($dp_01 + $dp_02) / 2)
      scalars[5] = $dp_0
      const $dp = []
      columns[2] = $dp
      const $q_env = []
      columns[3] = $q_env
      const $x = []
      columns[4] = $x
      const $y = []
      columns[5] = $y
      for (let i = 0; i < rows; i += 1) {
        $dp.push(($sign * ($dp_m[i] - $dp_0)))
        $q_env.push(($q_m[i] * ($rho_d / $rho_x)))
        $x.push(Math.log($dp[i]))
        $y.push(Math.log($q_env[i]))
      }
      const $N = countOf($x)
      scalars[6] = $N
      const $xbar = meanOf($x)
      scalars[7] = $xbar
      const $ybar = meanOf($y)
      scalars[8] = $ybar
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += (($x[i] - $xbar) ** 2)
      const $S_xx = (sum1 / ($N - 1))
      scalars[9] = $S_xx
      let sum2 = 0
      for (let i = 0; i < rows; i += 1) sum2 += (($y[i] - $ybar) ** 2)
      const $S_yy = (sum2 / ($N - 1))
      scalars[10] = $S_yy
      let sum3 = 0
      for (let i = 0; i < rows; i += 1) sum3 += (($x[i] - $xbar) * ($y[i] - $ybar))
      const $S_xy = (sum3 / ($N - 1))
      scalars[11] = $S_xy
      const $n = ($S_xy / $S_xx)
      scalars[12] = $n
      const $lnC = ($ybar - ($n * $xbar))
      scalars[13] = $lnC
      const $C_env = Math.exp($lnC)
      scalars[14] = $C_env
      const $r_2 = (($S_xy ** 2) / ($S_xx * $S_yy))
      scalars[15] = $r_2
      const $q_fit = []
      columns[6] = $q_fit
      const $e = []
      columns[7] = $e
      for (let i = 0; i < rows; i += 1) {
        $q_fit.push(($C_env * ($dp[i] ** $n)))
        $e.push((($y[i] - $lnC) - ($n * $x[i])))
      }
    },
  },
  "Scatter of the fit": {
    constants: ["alpha"],
    inputs: "x[] e[] N xbar S_xx n lnC",
    steps: [
      ["t_95","student_t(alpha, N - 2)"],
      ["SSE","sum(e .^ 2)"],
      ["S_n","sqrt(SSE/((N - 2)*(N - 1)*S_xx))"],
      ["S_lnC","S_n*sqrt(sum(x .^ 2)/N)"],
      ["n_lo","n - t_95*S_n"],
      ["n_hi","n + t_95*S_n"],
      ["C_lo","exp(lnC - t_95*S_lnC)"],
      ["C_hi","exp(lnC + t_95*S_lnC)"],
      ["h_x[]","1/N + (x - xbar) .^ 2/((N - 1)*S_xx)"],
      ["d_e[]","SSE*(1 - h_x) - e .^ 2"],
    ],
    run: (scalars, columns, rows) => {
      const $alpha = scalars[0]
      const $x = columns[0]
      const $e = columns[1]
      const $N = scalars[1]
      const $xbar = scalars[2]
      const $S_xx = scalars[3]
      const $n = scalars[4]
      const $lnC = scalars[5]
      const $t_95 = studentT($alpha, ($N - 2))
      scalars[6] = $t_95
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += ($e[i] ** 2)
      const $SSE = sum1
      scalars[7] = $SSE
      const $S_n = Math.sqrt(($SSE / ((($N - 2) * ($N - 1)) * $S_xx)))
      scalars[8] = $S_n
      let sum2 = 0
      for (let i = 0; i < rows; i += 1) sum2 += ($x[i] ** 2)
      const $S_lnC = ($S_n * Math.sqrt((sum2 / $N)))
      scalars[9] = $S_lnC
      const $n_lo = ($n - ($t_95 * $S_n))
      scalars[10] = $n_lo
      const $n_hi = ($n + ($t_95 * $S_n))
      scalars[11] = $n_hi
      const $C_lo = Math.exp(($lnC - ($t_95 * $S_lnC)))
      scalars[12] = $C_lo
      const $C_hi = Math.exp(($lnC + ($t_95 * $S_lnC)))
      scalars[13] = $C_hi
      const $h_x = []
      columns[2] = $h_x
      const $d_e = []
      columns[3] = $d_e
      for (let i = 0; i < rows; i += 1) {
        $h_x.push(((1 / $N) + ((($x[i] - $xbar) ** 2) / (($N - 1) * $S_xx))))
        $d_e.push((($SSE * (1 - $h_x[i])) - ($e[i] ** 2)))
      }
    },
  },
  "Residuals": {
    constants: [],
    inputs: "e[] d_e[] N",
    steps: [
      ["t_e[]","e .* sqrt((N - 3) ./ d_e)"],
    ],
    run: (scalars, columns, rows) => {
      const $e = columns[0]
      const $d_e = columns[1]
      const $N = scalars[0]
      const $t_e = []
      columns[2] = $t_e
      for (let i = 0; i < rows; i += 1) {
        $t_e.push(($e[i] * Math.sqrt((($N - 3) / $d_e[i]))))
      }
    },
  },
  "Deviation from the fitted curve": {
    constants: [],
    inputs: "q_env[] q_fit[]",
    steps: [
      ["d_fit[]","q_env ./ q_fit - 1"],
    ],
    run: (scalars, columns, rows) => {
      const $q_env = columns[0]
      const $q_fit = columns[1]
      const $d_fit = []
      columns[2] = $d_fit
      for (let i = 0; i < rows; i += 1) {
        $d_fit.push((($q_env[i] / $q_fit[i]) - 1))
      }
    },
  },
  "Change of the leakage between two readings": {
    constants: [],
    inputs: "x[] y[] dp[] z[] p_f u_f u_p k_u",
    steps: [
      ["N","count(x)"],
      ["d_x[]","x - mean(x)"],
      ["d_z[]","z - mean(z) - (sum(d_x .* z)/sum(d_x .^ 2))*d_x"],
      ["Q_z","sum(d_z .^ 2)"],
      ["s_z","sum(d_z .* y)/Q_z"],
      ["n_z","sum(d_x .* (y - s_z*z))/sum(d_x .^ 2)"],
      ["e_z[]","y - mean(y) - s_z*(z - mean(z)) - n_z*d_x"],
      ["SSE_z","sum(e_z .^ 2)"],
      ["S_z","sqrt(SSE_z/((N - 3)*Q_z))"],
      ["u_z","sqrt(sum((d_z/Q_z) .^ 2 .* (u_f^2 + (n_z*u_p ./ dp) .^ 2)))"],
      ["t_z","student_t(p_f/(N - 3), N - 3)"],
      ["l_z","max(t_z*S_z, k_u*u_z)"],
      ["f_z","exp(s_z) - 1"],
      ["f_l","exp(l_z*s_z/abs(s_z)) - 1"],
    ],
    run: (scalars, columns, rows) => {
      const $x = columns[0]
      const $y = columns[1]
      const $dp = columns[2]
      const $z = columns[3]
      const $p_f = scalars[0]
      const $u_f = scalars[1]
      const $u_p = scalars[2]
      const $k_u = scalars[3]
      const $N = countOf($x)
      scalars[4] = $N
      const $d_x = []
      columns[4] = $d_x
      for (let i = 0; i < rows; i += 1) {
        $d_x.push(($x[i] - meanOf($x)))
      }
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += ($d_x[i] * $z[i])
      let sum2 = 0
      for (let i = 0; i < rows; i += 1) sum2 += ($d_x[i] ** 2)
      const $d_z = []
      columns[5] = $d_z
      for (let i = 0; i < rows; i += 1) {
        $d_z.push((($z[i] - meanOf($z)) - ((sum1 / sum2) * $d_x[i])))
      }
      let sum3 = 0
      for (let i = 0; i < rows; i += 1) sum3 += ($d_z[i] ** 2)
      const $Q_z = sum3
      scalars[5] = $Q_z
      let sum4 = 0
      for (let i = 0; i < rows; i += 1) sum4 += ($d_z[i] * $y[i])
      const $s_z = (sum4 / $Q_z)
      scalars[6] = $s_z
      let sum5 = 0
      for (let i = 0; i < rows; i += 1) sum5 += ($d_x[i] * ($y[i] - ($s_z * $z[i])))
      let sum6 = 0
      for (let i = 0; i < rows; i += 1) sum6 += ($d_x[i] ** 2)
      const $n_z = (sum5 / sum6)
      scalars[7] = $n_z
      const $e_z = []
      columns[6] = $e_z
      for (let i = 0; i < rows; i += 1) {
        $e_z.push(((($y[i] - meanOf($y)) - ($s_z * ($z[i] - meanOf($z)))) - ($n_z * $d_x[i])))
      }
      let sum7 = 0
      for (let i = 0; i < rows; i += 1) sum7 += ($e_z[i] ** 2)
      const $SSE_z = sum7
      scalars[8] = $SSE_z
      const $S_z = Math.sqrt(($SSE_z / (($N - 3) * $Q_z)))
      scalars[9] = $S_z
      let sum8 = 0
      for (let i = 0; i < rows; i += 1) sum8 += ((($d_z[i] / $Q_z) ** 2) * (($u_f ** 2) + ((($n_z * $u_p) / $dp[i]) ** 2)))
      const $u_z = Math.sqrt(sum8)
      scalars[10] = $u_z
      const $t_z = studentT(($p_f / ($N - 3)), ($N - 3))
      scalars[11] = $t_z
      const $l_z = Math.max(($t_z * $S_z), ($k_u * $u_z))
      scalars[12] = $l_z
      const $f_z = (Math.exp($s_z) - 1)
      scalars[13] = $f_z
      const $f_l = (Math.exp((($l_z * $s_z) / Math.abs($s_z))) - 1)
      scalars[14] = $f_l
    },
  },
  "Correction to reference air density": {
    constants: ["rho_0"],
    inputs: "C_env C_lo C_hi n rho_x",
    steps: [
      ["f_rho","(rho_x/rho_0)^(1 - n)"],
      ["C_L","C_env*f_rho"],
      ["C_L_lo","C_lo*f_rho"],
      ["C_L_hi","C_hi*f_rho"],
    ],
    run: (scalars) => {
      const $rho_0 = scalars[0]
      const $C_env = scalars[1]
      const $C_lo = scalars[2]
      const $C_hi = scalars[3]
      const $n = scalars[4]
      const $rho_x = scalars[5]
      const $f_rho = (($rho_x / $rho_0) ** (1 - $n))
      scalars[6] = $f_rho
      const $C_L = ($C_env * $f_rho)
      scalars[7] = $C_L
      const $C_L_lo = ($C_lo * $f_rho)
      scalars[8] = $C_L_lo
      const $C_L_hi = ($C_hi * $f_rho)
      scalars[9] = $C_L_hi
    },
  },
  "At a reference pressure": {
    constants: ["rho_0","s_h","u_A"],
    inputs: "dp_r C_L n N xbar S_xx S_n t_95",
    steps: [
      ["q_pr","C_L*dp_r^n"],
      ["S_y","S_n*sqrt(((N - 1)/N)*S_xx + (log(dp_r) - xbar)^2)"],
      ["q_lo","q_pr*exp(-(t_95*S_y))"],
      ["q_hi","q_pr*exp(t_95*S_y)"],
      ["A_L","u_A*(1/s_h)*C_L*(rho_0/2)^0.5*dp_r^(n - 0.5)"],
      ["A_L_lo","A_L*exp(-(t_95*S_y))"],
      ["A_L_hi","A_L*exp(t_95*S_y)"],
    ],
    run: (scalars) => {
      const $rho_0 = scalars[0]
      const $s_h = scalars[1]
      const $u_A = scalars[2]
      const $dp_r = scalars[3]
      const $C_L = scalars[4]
      const $n = scalars[5]
      const $N = scalars[6]
      const $xbar = scalars[7]
      const $S_xx = scalars[8]
      const $S_n = scalars[9]
      const $t_95 = scalars[10]
      const $q_pr = ($C_L * ($dp_r ** $n))
      scalars[11] = $q_pr
      const $S_y = ($S_n * Math.sqrt((((($N - 1) / $N) * $S_xx) + ((Math.log($dp_r) - $xbar) ** 2))))
      scalars[12] = $S_y
      const $q_lo = ($q_pr * Math.exp((-($t_95 * $S_y))))
      scalars[13] = $q_lo
      const $q_hi = ($q_pr * Math.exp(($t_95 * $S_y)))
      scalars[14] = $q_hi
      const $A_L = (((($u_A * (1 / $s_h)) * $C_L) * (($rho_0 / 2) ** 0.5)) * ($dp_r ** ($n - 0.5)))
      scalars[15] = $A_L
      const $A_L_lo = ($A_L * Math.exp((-($t_95 * $S_y))))
      scalars[16] = $A_L_lo
      const $A_L_hi = ($A_L * Math.exp(($t_95 * $S_y)))
      scalars[17] = $A_L_hi
    },
  },
  "Derived quantities": {
    constants: [],
    inputs: "q_pr q_lo q_hi V A_E A_F A_T",
    steps: [
      ["n_pr","q_pr/V"],
      ["n_pr_lo","q_lo/V"],
      ["n_pr_hi","q_hi/V"],
      ["q_E","q_pr/A_E"],
      ["q_E_lo","q_lo/A_E"],
      ["q_E_hi","q_hi/A_E"],
      ["q_F","q_pr/A_F"],
      ["q_F_lo","q_lo/A_F"],
      ["q_F_hi","q_hi/A_F"],
      ["q_T","q_pr/A_T"],
      ["q_T_lo","q_lo/A_T"],
      ["q_T_hi","q_hi/A_T"],
    ],
    run: (scalars) => {
      const $q_pr = scalars[0]
      const $q_lo = scalars[1]
      const $q_hi = scalars[2]
      const $V = scalars[3]
      const $A_E = scalars[4]
      const $A_F = scalars[5]
      const $A_T = scalars[6]
      const $n_pr = ($q_pr / $V)
      scalars[7] = $n_pr
      const $n_pr_lo = ($q_lo / $V)
      scalars[8] = $n_pr_lo
      const $n_pr_hi = ($q_hi / $V)
      scalars[9] = $n_pr_hi
      const $q_E = ($q_pr / $A_E)
      scalars[10] = $q_E
      const $q_E_lo = ($q_lo / $A_E)
      scalars[11] = $q_E_lo
      const $q_E_hi = ($q_hi / $A_E)
      scalars[12] = $q_E_hi
      const $q_F = ($q_pr / $A_F)
      scalars[13] = $q_F
      const $q_F_lo = ($q_lo / $A_F)
      scalars[14] = $q_F_lo
      const $q_F_hi = ($q_hi / $A_F)
      scalars[15] = $q_F_hi
      const $q_T = ($q_pr / $A_T)
      scalars[16] = $q_T
      const $q_T_lo = ($q_lo / $A_T)
      scalars[17] = $q_T_lo
      const $q_T_hi = ($q_hi / $A_T)
      scalars[18] = $q_T_hi
    },
  },
  "Normalised leakage area": {
    constants: ["rho_0","C_g","s_h","u_A"],
    inputs: "q_pr dp_r A_E",
    steps: [
      ["A_N","u_A*q_pr/(s_h*C_g*sqrt(2*dp_r/rho_0)*A_E)"],
    ],
    run: (scalars) => {
      const $rho_0 = scalars[0]
      const $C_g = scalars[1]
      const $s_h = scalars[2]
      const $u_A = scalars[3]
      const $q_pr = scalars[4]
      const $dp_r = scalars[5]
      const $A_E = scalars[6]
      const $A_N = (($u_A * $q_pr) / ((($s_h * $C_g) * Math.sqrt(((2 * $dp_r) / $rho_0))) * $A_E))
      scalars[7] = $A_N
    },
  },
  "Mean of the directions": {
    constants: [],
    inputs: "q_r[] A_r[]",
    steps: [
      ["q_pr","mean(q_r)"],
      ["A_L","mean(A_r)"],
      ["d_q","(max(q_r) - min(q_r))/q_pr"],
    ],
    run: (scalars, columns, rows) => {
      const $q_r = columns[0]
      const $A_r = columns[1]
      const $q_pr = meanOf($q_r)
      scalars[0] = $q_pr
      const $A_L = meanOf($A_r)
      scalars[1] = $A_L
      const $d_q = ((largest($q_r) - smallest($q_r)) / $q_pr)
      scalars[2] = $d_q
    },
  },
  "Lowest pressure to use": {
    constants: [],
    inputs: "dp_floor k_z dp_s[]",
    steps: [
      ["dp_high","max(max(dp_s), 0 - min(dp_s))"],
      ["dp_min","max(dp_floor, k_z*dp_high)"],
    ],
    run: (scalars, columns, rows) => {
      const $dp_floor = scalars[0]
      const $k_z = scalars[1]
      const $dp_s = columns[0]
      const $dp_high = Math.max(largest($dp_s), (0 - smallest($dp_s)))
      scalars[2] = $dp_high
      const $dp_min = Math.max($dp_floor, ($k_z * $dp_high))
      scalars[3] = $dp_min
    },
  },
  "Temperature difference times height": {
    constants: [],
    inputs: "h_b theta_i theta_e",
    steps: [
      ["h_T","h_b*abs(theta_i - theta_e)"],
    ],
    run: (scalars) => {
      const $h_b = scalars[0]
      const $theta_i = scalars[1]
      const $theta_e = scalars[2]
      const $h_T = ($h_b * Math.abs(($theta_i - $theta_e)))
      scalars[3] = $h_T
    },
  },
  "Shape of the building": {
    constants: ["pi"],
    inputs: "V A_F",
    steps: [
      ["A_min","(36*pi)^(1/3)*V^(2/3)"],
      ["h_m","V/A_F"],
    ],
    run: (scalars) => {
      const $pi = scalars[0]
      const $V = scalars[1]
      const $A_F = scalars[2]
      const $A_min = (((36 * $pi) ** (1 / 3)) * ($V ** (2 / 3)))
      scalars[3] = $A_min
      const $h_m = ($V / $A_F)
      scalars[4] = $h_m
    },
  },
  "Sample of several buildings": {
    constants: [],
    inputs: "v_u k_s",
    steps: [
      ["v","k_s*v_u"],
    ],
    run: (scalars) => {
      const $v_u = scalars[0]
      const $k_s = scalars[1]
      const $v = ($k_s * $v_u)
      scalars[2] = $v
    },
  },
  "Extended for the comparison with a limit": {
    constants: ["k_ext"],
    inputs: "v_u",
    steps: [
      ["v","k_ext*v_u"],
    ],
    run: (scalars) => {
      const $k_ext = scalars[0]
      const $v_u = scalars[1]
      const $v = ($k_ext * $v_u)
      scalars[2] = $v
    },
  },
  "Rounding required by the target": {
    constants: [],
    inputs: "v_u k",
    steps: [
      ["v","round(v_u, k)"],
    ],
    run: (scalars) => {
      const $v_u = scalars[0]
      const $k = scalars[1]
      const $v = roundTo($v_u, $k)
      scalars[2] = $v
    },
  },
  "Limit to the places of the target": {
    constants: [],
    inputs: "L k",
    steps: [
      ["L_k","floor(L*10^k*(1 + 1e-9))/10^k"],
    ],
    run: (scalars) => {
      const $L = scalars[0]
      const $k = scalars[1]
      const $L_k = (Math.floor((($L * (10 ** $k)) * (1 + 1e-9))) / (10 ** $k))
      scalars[2] = $L_k
    },
  },
  "Limit before factors and rounding": {
    constants: ["k_v"],
    inputs: "L h_k k_v",
    steps: [
      ["L_m","(L + h_k)/k_v"],
    ],
    run: (scalars) => {
      const $k_v = scalars[3]
      const $L = scalars[1]
      const $h_k = scalars[2]
      const $L_m = (($L + $h_k) / $k_v)
      scalars[4] = $L_m
    },
  },
  "Against the target": {
    constants: [],
    inputs: "v L",
    steps: [
      ["M","L - to_limit(v, L)"],
      ["M_L","M/L"],
    ],
    run: (scalars) => {
      const $v = scalars[0]
      const $L = scalars[1]
      const $M = ($L - toLimit($v, $L))
      scalars[2] = $M
      const $M_L = ($M / $L)
      scalars[3] = $M_L
    },
  },
  "After ageing": {
    constants: [],
    inputs: "v L g",
    steps: [
      ["v_g","v*(1 + g)"],
      ["M_g","L - to_limit(v_g, L)"],
    ],
    run: (scalars) => {
      const $v = scalars[0]
      const $L = scalars[1]
      const $g = scalars[2]
      const $v_g = ($v * (1 + $g))
      scalars[3] = $v_g
      const $M_g = ($L - toLimit($v_g, $L))
      scalars[4] = $M_g
    },
  },
  "Leakage to seal": {
    constants: ["rho_0","s_h","u_A","C_o"],
    inputs: "v L B dp_r",
    steps: [
      ["q_s","max(0, to_limit(v, L) - L)*B"],
      ["A_s","u_A*q_s/(s_h*C_o*sqrt(2*dp_r/rho_0))"],
    ],
    run: (scalars) => {
      const $rho_0 = scalars[0]
      const $s_h = scalars[1]
      const $u_A = scalars[2]
      const $C_o = scalars[3]
      const $v = scalars[4]
      const $L = scalars[5]
      const $B = scalars[6]
      const $dp_r = scalars[7]
      const $q_s = (Math.max(0, (toLimit($v, $L) - $L)) * $B)
      scalars[8] = $q_s
      const $A_s = (($u_A * $q_s) / (($s_h * $C_o) * Math.sqrt(((2 * $dp_r) / $rho_0))))
      scalars[9] = $A_s
    },
  },
  "Leakage area to seal": {
    constants: ["rho_0","C_g","s_h","u_A"],
    inputs: "v L B dp_r",
    steps: [
      ["A_s","max(0, to_limit(v, L) - L)*B"],
      ["q_s","s_h*C_g*sqrt(2*dp_r/rho_0)*A_s/u_A"],
    ],
    run: (scalars) => {
      const $rho_0 = scalars[0]
      const $C_g = scalars[1]
      const $s_h = scalars[2]
      const $u_A = scalars[3]
      const $v = scalars[4]
      const $L = scalars[5]
      const $B = scalars[6]
      const $dp_r = scalars[7]
      const $A_s = (Math.max(0, (toLimit($v, $L) - $L)) * $B)
      scalars[8] = $A_s
      const $q_s = (((($s_h * $C_g) * Math.sqrt(((2 * $dp_r) / $rho_0))) * $A_s) / $u_A)
      scalars[9] = $q_s
    },
  },
  "Leakage that just meets the target, by its area": {
    constants: ["rho_0","C_g","s_h","u_A"],
    inputs: "L B dp_r",
    steps: [
      ["q_t","s_h*C_g*sqrt(2*dp_r/rho_0)*L*B/u_A"],
    ],
    run: (scalars) => {
      const $rho_0 = scalars[0]
      const $C_g = scalars[1]
      const $s_h = scalars[2]
      const $u_A = scalars[3]
      const $L = scalars[4]
      const $B = scalars[5]
      const $dp_r = scalars[6]
      const $q_t = ((((($s_h * $C_g) * Math.sqrt(((2 * $dp_r) / $rho_0))) * $L) * $B) / $u_A)
      scalars[7] = $q_t
    },
  },
  "Floor area times mean clear height": {
    constants: [],
    inputs: "z[] u_l[] A[] u_f[] h[]",
    steps: [
      ["V_i[]","z .* A .* h"],
      ["A_i[]","z .* A"],
      ["u_V[]","abs(z) .* sqrt((h .* u_f) .^ 2 + (A .* u_l) .^ 2)"],
      ["u_A[]","abs(z) .* u_f"],
    ],
    run: (scalars, columns, rows) => {
      const $z = columns[0]
      const $u_l = columns[1]
      const $A = columns[2]
      const $u_f = columns[3]
      const $h = columns[4]
      const $V_i = []
      columns[5] = $V_i
      const $A_i = []
      columns[6] = $A_i
      const $u_V = []
      columns[7] = $u_V
      const $u_A = []
      columns[8] = $u_A
      for (let i = 0; i < rows; i += 1) {
        $V_i.push((($z[i] * $A[i]) * $h[i]))
        $A_i.push(($z[i] * $A[i]))
        $u_V.push((Math.abs($z[i]) * Math.sqrt(((($h[i] * $u_f[i]) ** 2) + (($A[i] * $u_l[i]) ** 2)))))
        $u_A.push((Math.abs($z[i]) * $u_f[i]))
      }
    },
  },
  "Boxes, wedges and pyramids": {
    constants: [],
    inputs: "z[] u_l[] l[] w[] h[] k_s[]",
    steps: [
      ["V_i[]","z .* l .* w .* h ./ k_s"],
      ["A_i[]","z .* l .* w"],
      ["u_V[]","abs(z) .* sqrt((w .* h .* u_l) .^ 2 + (l .* h .* u_l) .^ 2 + (l .* w .* u_l) .^ 2) ./ k_s"],
      ["u_A[]","abs(z) .* sqrt((w .* u_l) .^ 2 + (l .* u_l) .^ 2)"],
    ],
    run: (scalars, columns, rows) => {
      const $z = columns[0]
      const $u_l = columns[1]
      const $l = columns[2]
      const $w = columns[3]
      const $h = columns[4]
      const $k_s = columns[5]
      const $V_i = []
      columns[6] = $V_i
      const $A_i = []
      columns[7] = $A_i
      const $u_V = []
      columns[8] = $u_V
      const $u_A = []
      columns[9] = $u_A
      for (let i = 0; i < rows; i += 1) {
        $V_i.push((((($z[i] * $l[i]) * $w[i]) * $h[i]) / $k_s[i]))
        $A_i.push((($z[i] * $l[i]) * $w[i]))
        $u_V.push(((Math.abs($z[i]) * Math.sqrt(((((($w[i] * $h[i]) * $u_l[i]) ** 2) + ((($l[i] * $h[i]) * $u_l[i]) ** 2)) + ((($l[i] * $w[i]) * $u_l[i]) ** 2)))) / $k_s[i]))
        $u_A.push((Math.abs($z[i]) * Math.sqrt(((($w[i] * $u_l[i]) ** 2) + (($l[i] * $u_l[i]) ** 2)))))
      }
    },
  },
  "Rooms under slopes": {
    constants: [],
    inputs: "z[] u_l[] l[] w[] h_k[] h_r[] w_f[]",
    steps: [
      ["S_i[]","w .* h_k + (w + w_f) .* (h_r - h_k)/2"],
      ["V_i[]","z .* l .* S_i"],
      ["A_i[]","z .* l .* w"],
      ["u_V[]","abs(z) .* u_l .* sqrt(S_i .^ 2 + (l .* (h_k + h_r)/2) .^ 2 + (l .* (h_r - h_k)/2) .^ 2 + (l .* (w - w_f)/2) .^ 2 + (l .* (w + w_f)/2) .^ 2)"],
      ["u_A[]","abs(z) .* sqrt((w .* u_l) .^ 2 + (l .* u_l) .^ 2)"],
    ],
    run: (scalars, columns, rows) => {
      const $z = columns[0]
      const $u_l = columns[1]
      const $l = columns[2]
      const $w = columns[3]
      const $h_k = columns[4]
      const $h_r = columns[5]
      const $w_f = columns[6]
      const $S_i = []
      columns[7] = $S_i
      const $V_i = []
      columns[8] = $V_i
      const $A_i = []
      columns[9] = $A_i
      const $u_V = []
      columns[10] = $u_V
      const $u_A = []
      columns[11] = $u_A
      for (let i = 0; i < rows; i += 1) {
        $S_i.push((($w[i] * $h_k[i]) + ((($w[i] + $w_f[i]) * ($h_r[i] - $h_k[i])) / 2)))
        $V_i.push((($z[i] * $l[i]) * $S_i[i]))
        $A_i.push((($z[i] * $l[i]) * $w[i]))
        $u_V.push(((Math.abs($z[i]) * $u_l[i]) * Math.sqrt(((((($S_i[i] ** 2) + ((($l[i] * ($h_k[i] + $h_r[i])) / 2) ** 2)) + ((($l[i] * ($h_r[i] - $h_k[i])) / 2) ** 2)) + ((($l[i] * ($w[i] - $w_f[i])) / 2) ** 2)) + ((($l[i] * ($w[i] + $w_f[i])) / 2) ** 2)))))
        $u_A.push((Math.abs($z[i]) * Math.sqrt(((($w[i] * $u_l[i]) ** 2) + (($l[i] * $u_l[i]) ** 2)))))
      }
    },
  },
  "Frustums": {
    constants: [],
    inputs: "z[] u_l[] l[] w[] l_t[] w_t[] h[]",
    steps: [
      ["B_i[]","l .* w + (l + l_t) .* (w + w_t) + l_t .* w_t"],
      ["V_i[]","z .* h .* B_i/6"],
      ["A_i[]","z .* l .* w"],
      ["u_V[]","abs(z) .* u_l .* sqrt(B_i .^ 2 + (h .* (2*w + w_t)) .^ 2 + (h .* (2*l + l_t)) .^ 2 + (h .* (2*w_t + w)) .^ 2 + (h .* (2*l_t + l)) .^ 2)/6"],
      ["u_A[]","abs(z) .* sqrt((w .* u_l) .^ 2 + (l .* u_l) .^ 2)"],
    ],
    run: (scalars, columns, rows) => {
      const $z = columns[0]
      const $u_l = columns[1]
      const $l = columns[2]
      const $w = columns[3]
      const $l_t = columns[4]
      const $w_t = columns[5]
      const $h = columns[6]
      const $B_i = []
      columns[7] = $B_i
      const $V_i = []
      columns[8] = $V_i
      const $A_i = []
      columns[9] = $A_i
      const $u_V = []
      columns[10] = $u_V
      const $u_A = []
      columns[11] = $u_A
      for (let i = 0; i < rows; i += 1) {
        $B_i.push(((($l[i] * $w[i]) + (($l[i] + $l_t[i]) * ($w[i] + $w_t[i]))) + ($l_t[i] * $w_t[i])))
        $V_i.push(((($z[i] * $h[i]) * $B_i[i]) / 6))
        $A_i.push((($z[i] * $l[i]) * $w[i]))
        $u_V.push((((Math.abs($z[i]) * $u_l[i]) * Math.sqrt(((((($B_i[i] ** 2) + (($h[i] * ((2 * $w[i]) + $w_t[i])) ** 2)) + (($h[i] * ((2 * $l[i]) + $l_t[i])) ** 2)) + (($h[i] * ((2 * $w_t[i]) + $w[i])) ** 2)) + (($h[i] * ((2 * $l_t[i]) + $l[i])) ** 2)))) / 6))
        $u_A.push((Math.abs($z[i]) * Math.sqrt(((($w[i] * $u_l[i]) ** 2) + (($l[i] * $u_l[i]) ** 2)))))
      }
    },
  },
  "Areas as given": {
    constants: [],
    inputs: "z[] A[] u_f[]",
    steps: [
      ["A_i[]","z .* A"],
      ["u_A[]","abs(z) .* u_f"],
    ],
    run: (scalars, columns, rows) => {
      const $z = columns[0]
      const $A = columns[1]
      const $u_f = columns[2]
      const $A_i = []
      columns[3] = $A_i
      const $u_A = []
      columns[4] = $u_A
      for (let i = 0; i < rows; i += 1) {
        $A_i.push(($z[i] * $A[i]))
        $u_A.push((Math.abs($z[i]) * $u_f[i]))
      }
    },
  },
  "Rectangles and triangles": {
    constants: [],
    inputs: "z[] u_l[] l[] h[] k_s[]",
    steps: [
      ["A_i[]","z .* l .* h ./ k_s"],
      ["u_A[]","abs(z) .* sqrt((h .* u_l) .^ 2 + (l .* u_l) .^ 2) ./ k_s"],
    ],
    run: (scalars, columns, rows) => {
      const $z = columns[0]
      const $u_l = columns[1]
      const $l = columns[2]
      const $h = columns[3]
      const $k_s = columns[4]
      const $A_i = []
      columns[5] = $A_i
      const $u_A = []
      columns[6] = $u_A
      for (let i = 0; i < rows; i += 1) {
        $A_i.push(((($z[i] * $l[i]) * $h[i]) / $k_s[i]))
        $u_A.push(((Math.abs($z[i]) * Math.sqrt(((($h[i] * $u_l[i]) ** 2) + (($l[i] * $u_l[i]) ** 2)))) / $k_s[i]))
      }
    },
  },
  "Trapeziums": {
    constants: [],
    inputs: "z[] u_l[] l[] l_t[] h[]",
    steps: [
      ["A_i[]","z .* (l + l_t) .* h/2"],
      ["u_A[]","abs(z) .* u_l .* sqrt(2*h .^ 2 + (l + l_t) .^ 2)/2"],
    ],
    run: (scalars, columns, rows) => {
      const $z = columns[0]
      const $u_l = columns[1]
      const $l = columns[2]
      const $l_t = columns[3]
      const $h = columns[4]
      const $A_i = []
      columns[5] = $A_i
      const $u_A = []
      columns[6] = $u_A
      for (let i = 0; i < rows; i += 1) {
        $A_i.push(((($z[i] * ($l[i] + $l_t[i])) * $h[i]) / 2))
        $u_A.push((((Math.abs($z[i]) * $u_l[i]) * Math.sqrt(((2 * ($h[i] ** 2)) + (($l[i] + $l_t[i]) ** 2)))) / 2))
      }
    },
  },
  "Internal volume": {
    constants: [],
    inputs: "V_i[] u_V[] b[] r_l",
    steps: [
      ["V","sum(b .* V_i)"],
      ["u_t","sqrt(sum((b .* u_V) .^ 2) + (3*r_l*V)^2)"],
      ["u_r","u_t/V"],
    ],
    run: (scalars, columns, rows) => {
      const $V_i = columns[0]
      const $u_V = columns[1]
      const $b = columns[2]
      const $r_l = scalars[0]
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += ($b[i] * $V_i[i])
      const $V = sum1
      scalars[1] = $V
      let sum2 = 0
      for (let i = 0; i < rows; i += 1) sum2 += (($b[i] * $u_V[i]) ** 2)
      const $u_t = Math.sqrt((sum2 + (((3 * $r_l) * $V) ** 2)))
      scalars[2] = $u_t
      const $u_r = ($u_t / $V)
      scalars[3] = $u_r
    },
  },
  "Area": {
    constants: ["u_A"],
    inputs: "A_i[] u_A[] b[] r_l",
    steps: [
      ["A_t","sum(b .* A_i)"],
      ["u_t","sqrt(sum((b .* u_A) .^ 2) + (2*r_l*A_t)^2)"],
    ],
    run: (scalars, columns, rows) => {
      const $u_A = columns[1]
      const $A_i = columns[0]
      const $b = columns[2]
      const $r_l = scalars[1]
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += ($b[i] * $A_i[i])
      const $A_t = sum1
      scalars[2] = $A_t
      let sum2 = 0
      for (let i = 0; i < rows; i += 1) sum2 += (($b[i] * $u_A[i]) ** 2)
      const $u_t = Math.sqrt((sum2 + (((2 * $r_l) * $A_t) ** 2)))
      scalars[3] = $u_t
    },
  },
  "Net and overall internal volume compared": {
    constants: [],
    inputs: "V_n V_o",
    steps: [
      ["d_V","V_o - V_n"],
      ["r_V","V_o/V_n"],
    ],
    run: (scalars) => {
      const $V_n = scalars[0]
      const $V_o = scalars[1]
      const $d_V = ($V_o - $V_n)
      scalars[2] = $d_V
      const $r_V = ($V_o / $V_n)
      scalars[3] = $r_V
    },
  },
  "Compared with the stated total": {
    constants: [],
    inputs: "v_w u_w v_s",
    steps: [
      ["d_s","v_w - v_s"],
      ["d_r","d_s/v_s"],
      ["U_w","2*u_w"],
    ],
    run: (scalars) => {
      const $v_w = scalars[0]
      const $u_w = scalars[1]
      const $v_s = scalars[2]
      const $d_s = ($v_w - $v_s)
      scalars[3] = $d_s
      const $d_r = ($d_s / $v_s)
      scalars[4] = $d_r
      const $U_w = (2 * $u_w)
      scalars[5] = $U_w
    },
  },
  "Pressures to set": {
    constants: [],
    inputs: "dp_min dp_top m_p dp_gap N_min",
    steps: [
      ["dp_low","round(dp_min + m_p, 0)"],
      ["N_r","max(N_min, round((dp_top - dp_low)/dp_gap + 0.5, 0) + 1)"],
      ["d_p","(dp_top - dp_low)/(N_r - 1)"],
    ],
    run: (scalars) => {
      const $dp_min = scalars[0]
      const $dp_top = scalars[1]
      const $m_p = scalars[2]
      const $dp_gap = scalars[3]
      const $N_min = scalars[4]
      const $dp_low = roundTo(($dp_min + $m_p), 0)
      scalars[5] = $dp_low
      const $N_r = Math.max($N_min, (roundTo(((($dp_top - $dp_low) / $dp_gap) + 0.5), 0) + 1))
      scalars[6] = $N_r
      const $d_p = (($dp_top - $dp_low) / ($N_r - 1))
      scalars[7] = $d_p
    },
  },
  "Readings of the gauge": {
    constants: [],
    inputs: "k_r[] dp_top d_p sign dp_0",
    steps: [
      ["dp[]","dp_top - k_r*d_p"],
      ["dp_g[]","sign*dp + dp_0"],
    ],
    run: (scalars, columns, rows) => {
      const $k_r = columns[0]
      const $dp_top = scalars[0]
      const $d_p = scalars[1]
      const $sign = scalars[2]
      const $dp_0 = scalars[3]
      const $dp = []
      columns[1] = $dp
      const $dp_g = []
      columns[2] = $dp_g
      for (let i = 0; i < rows; i += 1) {
        $dp.push(($dp_top - ($k_r[i] * $d_p)))
        $dp_g.push((($sign * $dp[i]) + $dp_0))
      }
    },
  },
  "Readings of the gauge at the stations": {
    constants: [],
    inputs: "dp[] sign dp_0",
    steps: [
      ["dp_g[]","sign*dp + dp_0"],
    ],
    run: (scalars, columns, rows) => {
      const $dp = columns[0]
      const $sign = scalars[0]
      const $dp_0 = scalars[1]
      const $dp_g = []
      columns[1] = $dp_g
      for (let i = 0; i < rows; i += 1) {
        $dp_g.push((($sign * $dp[i]) + $dp_0))
      }
    },
  },
  "Leakage that just meets the target": {
    constants: [],
    inputs: "L B",
    steps: [
      ["q_t","L*B"],
    ],
    run: (scalars) => {
      const $L = scalars[0]
      const $B = scalars[1]
      const $q_t = ($L * $B)
      scalars[2] = $q_t
    },
  },
  "Expected flow": {
    constants: ["rho_0"],
    inputs: "q_t dp_r n dp[] rho_d rho_x",
    steps: [
      ["q_L[]","q_t*(dp/dp_r) .^ n"],
      ["q_m[]","q_L*(rho_0/rho_x)^(1 - n)*(rho_x/rho_d)"],
    ],
    run: (scalars, columns, rows) => {
      const $rho_0 = scalars[0]
      const $q_t = scalars[1]
      const $dp_r = scalars[2]
      const $n = scalars[3]
      const $dp = columns[0]
      const $rho_d = scalars[4]
      const $rho_x = scalars[5]
      const $q_L = []
      columns[1] = $q_L
      const $q_m = []
      columns[2] = $q_m
      for (let i = 0; i < rows; i += 1) {
        $q_L.push(($q_t * (($dp[i] / $dp_r) ** $n)))
        $q_m.push((($q_L[i] * (($rho_0 / $rho_x) ** (1 - $n))) * ($rho_x / $rho_d)))
      }
    },
  },
  "Leakage that a range can measure": {
    constants: ["rho_0"],
    inputs: "q_low[] q_top[] dp_low dp_top dp_r n_hi rho_d rho_x V",
    steps: [
      ["f_d","(rho_d/rho_x)*(rho_x/rho_0)^(1 - n_hi)"],
      ["q_least[]","q_low*f_d*(dp_r/dp_low)^n_hi"],
      ["q_most[]","q_top*f_d*(dp_r/dp_top)^n_hi"],
      ["n_least[]","q_least/V"],
      ["n_most[]","q_most/V"],
    ],
    run: (scalars, columns, rows) => {
      const $rho_0 = scalars[0]
      const $q_low = columns[0]
      const $q_top = columns[1]
      const $dp_low = scalars[1]
      const $dp_top = scalars[2]
      const $dp_r = scalars[3]
      const $n_hi = scalars[4]
      const $rho_d = scalars[5]
      const $rho_x = scalars[6]
      const $V = scalars[7]
      const $f_d = (($rho_d / $rho_x) * (($rho_x / $rho_0) ** (1 - $n_hi)))
      scalars[8] = $f_d
      const $q_least = []
      columns[2] = $q_least
      const $q_most = []
      columns[3] = $q_most
      const $n_least = []
      columns[4] = $n_least
      const $n_most = []
      columns[5] = $n_most
      for (let i = 0; i < rows; i += 1) {
        $q_least.push((($q_low[i] * $f_d) * (($dp_r / $dp_low) ** $n_hi)))
        $q_most.push((($q_top[i] * $f_d) * (($dp_r / $dp_top) ** $n_hi)))
        $n_least.push(($q_least[i] / $V))
        $n_most.push(($q_most[i] / $V))
      }
    },
  },
  "Stack pressure": {
    constants: ["g_n"],
    inputs: "h_b rho_i rho_e",
    steps: [
      ["dp_st","g_n*h_b*(rho_e - rho_i)"],
      ["dp_foot","-(dp_st/2)"],
    ],
    run: (scalars) => {
      const $g_n = scalars[0]
      const $h_b = scalars[1]
      const $rho_i = scalars[2]
      const $rho_e = scalars[3]
      const $dp_st = (($g_n * $h_b) * ($rho_e - $rho_i))
      scalars[4] = $dp_st
      const $dp_foot = (-($dp_st / 2))
      scalars[5] = $dp_foot
    },
  },
  "Round holes": {
    constants: ["pi","u_A","u_m"],
    inputs: "z[] d_h[]",
    steps: [
      ["A_h[]","u_A*pi*z .* (d_h/u_m) .^ 2/4"],
    ],
    run: (scalars, columns, rows) => {
      const $pi = scalars[0]
      const $u_A = scalars[1]
      const $u_m = scalars[2]
      const $z = columns[0]
      const $d_h = columns[1]
      const $A_h = []
      columns[2] = $A_h
      for (let i = 0; i < rows; i += 1) {
        $A_h.push((((($u_A * $pi) * $z[i]) * (($d_h[i] / $u_m) ** 2)) / 4))
      }
    },
  },
  "Gaps": {
    constants: ["u_A","u_m"],
    inputs: "z[] w_g[] l_g[]",
    steps: [
      ["A_h[]","u_A*z .* (w_g/u_m) .* l_g"],
    ],
    run: (scalars, columns, rows) => {
      const $u_A = scalars[0]
      const $u_m = scalars[1]
      const $z = columns[0]
      const $w_g = columns[1]
      const $l_g = columns[2]
      const $A_h = []
      columns[3] = $A_h
      for (let i = 0; i < rows; i += 1) {
        $A_h.push(((($u_A * $z[i]) * ($w_g[i] / $u_m)) * $l_g[i]))
      }
    },
  },
  "Areas as estimated": {
    constants: [],
    inputs: "z[] A_e[]",
    steps: [
      ["A_h[]","z .* A_e"],
    ],
    run: (scalars, columns, rows) => {
      const $z = columns[0]
      const $A_e = columns[1]
      const $A_h = []
      columns[2] = $A_h
      for (let i = 0; i < rows; i += 1) {
        $A_h.push(($z[i] * $A_e[i]))
      }
    },
  },
  "Flow through the holes": {
    constants: ["rho_0","s_h","u_A","C_o"],
    inputs: "A_h[] dp_r A_q",
    steps: [
      ["q_h[]","s_h*C_o*sqrt(2*dp_r/rho_0)*A_h/u_A"],
      ["s_A[]","A_h/A_q"],
      ["A_sum","sum(A_h)"],
      ["s_sum","A_sum/A_q"],
    ],
    run: (scalars, columns, rows) => {
      const $rho_0 = scalars[0]
      const $s_h = scalars[1]
      const $u_A = scalars[2]
      const $C_o = scalars[3]
      const $A_h = columns[0]
      const $dp_r = scalars[4]
      const $A_q = scalars[5]
      const $q_h = []
      columns[1] = $q_h
      const $s_A = []
      columns[2] = $s_A
      for (let i = 0; i < rows; i += 1) {
        $q_h.push((((($s_h * $C_o) * Math.sqrt(((2 * $dp_r) / $rho_0))) * $A_h[i]) / $u_A))
        $s_A.push(($A_h[i] / $A_q))
      }
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += $A_h[i]
      const $A_sum = sum1
      scalars[6] = $A_sum
      const $s_sum = ($A_sum / $A_q)
      scalars[7] = $s_sum
    },
  },
  "As one hole": {
    constants: ["pi","u_A","u_m"],
    inputs: "A_s",
    steps: [
      ["a_q","u_m*sqrt(A_s/u_A)"],
      ["d_q","u_m*sqrt(4*A_s/(pi*u_A))"],
    ],
    run: (scalars) => {
      const $pi = scalars[0]
      const $u_A = scalars[1]
      const $u_m = scalars[2]
      const $A_s = scalars[3]
      const $a_q = ($u_m * Math.sqrt(($A_s / $u_A)))
      scalars[4] = $a_q
      const $d_q = ($u_m * Math.sqrt(((4 * $A_s) / ($pi * $u_A))))
      scalars[5] = $d_q
    },
  },
  "Limit with the ageing allowance": {
    constants: [],
    inputs: "L g",
    steps: [
      ["L_g","L/(1 + g)"],
    ],
    run: (scalars) => {
      const $L = scalars[0]
      const $g = scalars[1]
      const $L_g = ($L / (1 + $g))
      scalars[2] = $L_g
    },
  },
  "Two leakage rates compared": {
    constants: [],
    inputs: "q_a q_b",
    steps: [
      ["d_ab","q_a - q_b"],
      ["s_ab","d_ab/q_a"],
    ],
    run: (scalars) => {
      const $q_a = scalars[0]
      const $q_b = scalars[1]
      const $d_ab = ($q_a - $q_b)
      scalars[2] = $d_ab
      const $s_ab = ($d_ab / $q_a)
      scalars[3] = $s_ab
    },
  },
  "Running estimate with an assumed exponent": {
    constants: [],
    inputs: "xbar ybar n_a",
    steps: [
      ["n","n_a"],
      ["C_env","exp(ybar - n_a*xbar)"],
    ],
    run: (scalars) => {
      const $xbar = scalars[0]
      const $ybar = scalars[1]
      const $n_a = scalars[2]
      const $n = $n_a
      scalars[3] = $n
      const $C_env = Math.exp(($ybar - ($n_a * $xbar)))
      scalars[4] = $C_env
    },
  },
  "Interval with few readings": {
    constants: [],
    inputs: "v_s v[] v_lo[] v_hi[]",
    steps: [
      ["s_lo","v_s*exp(sum(log(v_lo ./ v))/count(v))"],
      ["s_hi","v_s*exp(sum(log(v_hi ./ v))/count(v))"],
    ],
    run: (scalars, columns, rows) => {
      const $v_s = scalars[0]
      const $v = columns[0]
      const $v_lo = columns[1]
      const $v_hi = columns[2]
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += Math.log(($v_lo[i] / $v[i]))
      const $s_lo = ($v_s * Math.exp((sum1 / countOf($v))))
      scalars[1] = $s_lo
      let sum2 = 0
      for (let i = 0; i < rows; i += 1) sum2 += Math.log(($v_hi[i] / $v[i]))
      const $s_hi = ($v_s * Math.exp((sum2 / countOf($v))))
      scalars[2] = $s_hi
    },
  },
  "What one further reading would bring": {
    constants: ["alpha"],
    inputs: "N xbar S_xx SSE dp_r dp_next",
    steps: [
      ["s_e","sqrt(SSE/(N - 2))"],
      ["h_now","student_t(alpha, N - 2)*s_e*sqrt(1/N + (log(dp_r) - xbar)^2/((N - 1)*S_xx))"],
      ["x_n","(N*xbar + log(dp_next))/(N + 1)"],
      ["Q_n","(N - 1)*S_xx + (N/(N + 1))*(log(dp_next) - xbar)^2"],
      ["h_next","student_t(alpha, N - 1)*s_e*sqrt(1/(N + 1) + (log(dp_r) - x_n)^2/Q_n)"],
      ["g_h","h_now - h_next"],
    ],
    run: (scalars) => {
      const $alpha = scalars[0]
      const $N = scalars[1]
      const $xbar = scalars[2]
      const $S_xx = scalars[3]
      const $SSE = scalars[4]
      const $dp_r = scalars[5]
      const $dp_next = scalars[6]
      const $s_e = Math.sqrt(($SSE / ($N - 2)))
      scalars[7] = $s_e
      const $h_now = ((studentT($alpha, ($N - 2)) * $s_e) * Math.sqrt(((1 / $N) + (((Math.log($dp_r) - $xbar) ** 2) / (($N - 1) * $S_xx)))))
      scalars[8] = $h_now
      const $x_n = ((($N * $xbar) + Math.log($dp_next)) / ($N + 1))
      scalars[9] = $x_n
      const $Q_n = ((($N - 1) * $S_xx) + (($N / ($N + 1)) * ((Math.log($dp_next) - $xbar) ** 2)))
      scalars[10] = $Q_n
      const $h_next = ((studentT($alpha, ($N - 1)) * $s_e) * Math.sqrt(((1 / ($N + 1)) + (((Math.log($dp_r) - $x_n) ** 2) / $Q_n))))
      scalars[11] = $h_next
      const $g_h = ($h_now - $h_next)
      scalars[12] = $g_h
    },
  },
  "Drift of the zero-flow pressure": {
    constants: [],
    inputs: "dp_01 dp_02 n dp_l",
    steps: [
      ["d_0","dp_02 - dp_01"],
      ["e_0","n*abs(d_0)/(2*dp_l)"],
    ],
    run: (scalars) => {
      const $dp_01 = scalars[0]
      const $dp_02 = scalars[1]
      const $n = scalars[2]
      const $dp_l = scalars[3]
      const $d_0 = ($dp_02 - $dp_01)
      scalars[4] = $d_0
      const $e_0 = (($n * Math.abs($d_0)) / (2 * $dp_l))
      scalars[5] = $e_0
    },
  },
  "Leakage curve, weighted by flow squared": {
    constants: [],
    inputs: "dp_m[] q_m[] sign dp_01 dp_02 rho_d rho_x",
    steps: [
      ["dp_0","(dp_01 + dp_02)/2"],
      ["dp[]","sign*(dp_m - dp_0)"],
      ["q_env[]","q_m*(rho_d/rho_x)"],
      ["x[]","log(dp)"],
      ["y[]","log(q_env)"],
      ["N","count(x)"],
      ["w[]","N*q_env .^ 2/sum(q_env .^ 2)"],
      ["xbar","sum(w .* x)/N"],
      ["ybar","sum(w .* y)/N"],
      ["S_xx","sum(w .* (x - xbar) .^ 2)/(N - 1)"],
      ["S_yy","sum(w .* (y - ybar) .^ 2)/(N - 1)"],
      ["S_xy","sum(w .* (x - xbar) .* (y - ybar))/(N - 1)"],
      ["n","S_xy/S_xx"],
      ["lnC","ybar - n*xbar"],
      ["C_env","exp(lnC)"],
      ["r_2","S_xy^2/(S_xx*S_yy)"],
      ["q_fit[]","C_env*dp .^ n"],
      ["e[]","sqrt(w) .* (y - lnC - n*x)"],
    ],
    run: (scalars, columns, rows) => {
      const $dp_m = columns[0]
      const $q_m = columns[1]
      const $sign = scalars[0]
      const $dp_01 = scalars[1]
      const $dp_02 = scalars[2]
      const $rho_d = scalars[3]
      const $rho_x = scalars[4]
      const $dp_0 = (($dp_01 + $dp_02) / 2)
      scalars[5] = $dp_0
      const $dp = []
      columns[2] = $dp
      const $q_env = []
      columns[3] = $q_env
      const $x = []
      columns[4] = $x
      const $y = []
      columns[5] = $y
      for (let i = 0; i < rows; i += 1) {
        $dp.push(($sign * ($dp_m[i] - $dp_0)))
        $q_env.push(($q_m[i] * ($rho_d / $rho_x)))
        $x.push(Math.log($dp[i]))
        $y.push(Math.log($q_env[i]))
      }
      const $N = countOf($x)
      scalars[6] = $N
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += ($q_env[i] ** 2)
      const $w = []
      columns[6] = $w
      for (let i = 0; i < rows; i += 1) {
        $w.push((($N * ($q_env[i] ** 2)) / sum1))
      }
      let sum2 = 0
      for (let i = 0; i < rows; i += 1) sum2 += ($w[i] * $x[i])
      const $xbar = (sum2 / $N)
      scalars[7] = $xbar
      let sum3 = 0
      for (let i = 0; i < rows; i += 1) sum3 += ($w[i] * $y[i])
      const $ybar = (sum3 / $N)
      scalars[8] = $ybar
      let sum4 = 0
      for (let i = 0; i < rows; i += 1) sum4 += ($w[i] * (($x[i] - $xbar) ** 2))
      const $S_xx = (sum4 / ($N - 1))
      scalars[9] = $S_xx
      let sum5 = 0
      for (let i = 0; i < rows; i += 1) sum5 += ($w[i] * (($y[i] - $ybar) ** 2))
      const $S_yy = (sum5 / ($N - 1))
      scalars[10] = $S_yy
      let sum6 = 0
      for (let i = 0; i < rows; i += 1) sum6 += (($w[i] * ($x[i] - $xbar)) * ($y[i] - $ybar))
      const $S_xy = (sum6 / ($N - 1))
      scalars[11] = $S_xy
      const $n = ($S_xy / $S_xx)
      scalars[12] = $n
      const $lnC = ($ybar - ($n * $xbar))
      scalars[13] = $lnC
      const $C_env = Math.exp($lnC)
      scalars[14] = $C_env
      const $r_2 = (($S_xy ** 2) / ($S_xx * $S_yy))
      scalars[15] = $r_2
      const $q_fit = []
      columns[7] = $q_fit
      const $e = []
      columns[8] = $e
      for (let i = 0; i < rows; i += 1) {
        $q_fit.push(($C_env * ($dp[i] ** $n)))
        $e.push((Math.sqrt($w[i]) * (($y[i] - $lnC) - ($n * $x[i]))))
      }
    },
  },
  "Scatter of the weighted fit": {
    constants: ["alpha"],
    inputs: "x[] e[] N xbar S_xx n lnC w[]",
    steps: [
      ["t_95","student_t(alpha, N - 2)"],
      ["SSE","sum(e .^ 2)"],
      ["S_n","sqrt(SSE/((N - 2)*(N - 1)*S_xx))"],
      ["S_lnC","S_n*sqrt(sum(w .* x .^ 2)/N)"],
      ["n_lo","n - t_95*S_n"],
      ["n_hi","n + t_95*S_n"],
      ["C_lo","exp(lnC - t_95*S_lnC)"],
      ["C_hi","exp(lnC + t_95*S_lnC)"],
      ["h_x[]","w .* (1/N + (x - xbar) .^ 2/((N - 1)*S_xx))"],
      ["d_e[]","SSE*(1 - h_x) - e .^ 2"],
    ],
    run: (scalars, columns, rows) => {
      const $alpha = scalars[0]
      const $x = columns[0]
      const $e = columns[1]
      const $N = scalars[1]
      const $xbar = scalars[2]
      const $S_xx = scalars[3]
      const $n = scalars[4]
      const $lnC = scalars[5]
      const $w = columns[2]
      const $t_95 = studentT($alpha, ($N - 2))
      scalars[6] = $t_95
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += ($e[i] ** 2)
      const $SSE = sum1
      scalars[7] = $SSE
      const $S_n = Math.sqrt(($SSE / ((($N - 2) * ($N - 1)) * $S_xx)))
      scalars[8] = $S_n
      let sum2 = 0
      for (let i = 0; i < rows; i += 1) sum2 += ($w[i] * ($x[i] ** 2))
      const $S_lnC = ($S_n * Math.sqrt((sum2 / $N)))
      scalars[9] = $S_lnC
      const $n_lo = ($n - ($t_95 * $S_n))
      scalars[10] = $n_lo
      const $n_hi = ($n + ($t_95 * $S_n))
      scalars[11] = $n_hi
      const $C_lo = Math.exp(($lnC - ($t_95 * $S_lnC)))
      scalars[12] = $C_lo
      const $C_hi = Math.exp(($lnC + ($t_95 * $S_lnC)))
      scalars[13] = $C_hi
      const $h_x = []
      columns[3] = $h_x
      const $d_e = []
      columns[4] = $d_e
      for (let i = 0; i < rows; i += 1) {
        $h_x.push(($w[i] * ((1 / $N) + ((($x[i] - $xbar) ** 2) / (($N - 1) * $S_xx)))))
        $d_e.push((($SSE * (1 - $h_x[i])) - ($e[i] ** 2)))
      }
    },
  },
  "Weighted line of organic correlation": {
    constants: [],
    inputs: "x[] y[] u_x[] u_y[]",
    steps: [
      ["w[]","1 ./ (u_x .* u_y)"],
      ["W","sum(w)"],
      ["xbar","sum(w .* x)/W"],
      ["ybar","sum(w .* y)/W"],
      ["Q_x","sum(w .* (x - xbar) .^ 2)"],
      ["Q_y","sum(w .* (y - ybar) .^ 2)"],
      ["n","sqrt(Q_y/Q_x)"],
      ["lnC","ybar - n*xbar"],
      ["d_ny[]","w .* (y - ybar)/(n*Q_x)"],
      ["d_nx[]","(0 - n)*w .* (x - xbar)/Q_x"],
      ["d_Cy[]","w/W - xbar*d_ny"],
      ["d_Cx[]","(0 - n)*w/W - xbar*d_nx"],
      ["u_n","sqrt(sum((d_ny .* u_y) .^ 2 + (d_nx .* u_x) .^ 2))"],
      ["u_lnC","sqrt(sum((d_Cy .* u_y) .^ 2 + (d_Cx .* u_x) .^ 2))"],
      ["u_nC","sum(d_ny .* d_Cy .* u_y .^ 2 + d_nx .* d_Cx .* u_x .^ 2)"],
    ],
    run: (scalars, columns, rows) => {
      const $x = columns[0]
      const $y = columns[1]
      const $u_x = columns[2]
      const $u_y = columns[3]
      const $w = []
      columns[4] = $w
      for (let i = 0; i < rows; i += 1) {
        $w.push((1 / ($u_x[i] * $u_y[i])))
      }
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += $w[i]
      const $W = sum1
      scalars[0] = $W
      let sum2 = 0
      for (let i = 0; i < rows; i += 1) sum2 += ($w[i] * $x[i])
      const $xbar = (sum2 / $W)
      scalars[1] = $xbar
      let sum3 = 0
      for (let i = 0; i < rows; i += 1) sum3 += ($w[i] * $y[i])
      const $ybar = (sum3 / $W)
      scalars[2] = $ybar
      let sum4 = 0
      for (let i = 0; i < rows; i += 1) sum4 += ($w[i] * (($x[i] - $xbar) ** 2))
      const $Q_x = sum4
      scalars[3] = $Q_x
      let sum5 = 0
      for (let i = 0; i < rows; i += 1) sum5 += ($w[i] * (($y[i] - $ybar) ** 2))
      const $Q_y = sum5
      scalars[4] = $Q_y
      const $n = Math.sqrt(($Q_y / $Q_x))
      scalars[5] = $n
      const $lnC = ($ybar - ($n * $xbar))
      scalars[6] = $lnC
      const $d_ny = []
      columns[5] = $d_ny
      const $d_nx = []
      columns[6] = $d_nx
      const $d_Cy = []
      columns[7] = $d_Cy
      const $d_Cx = []
      columns[8] = $d_Cx
      for (let i = 0; i < rows; i += 1) {
        $d_ny.push((($w[i] * ($y[i] - $ybar)) / ($n * $Q_x)))
        $d_nx.push(((((0 - $n) * $w[i]) * ($x[i] - $xbar)) / $Q_x))
        $d_Cy.push((($w[i] / $W) - ($xbar * $d_ny[i])))
        $d_Cx.push(((((0 - $n) * $w[i]) / $W) - ($xbar * $d_nx[i])))
      }
      let sum6 = 0
      for (let i = 0; i < rows; i += 1) sum6 += ((($d_ny[i] * $u_y[i]) ** 2) + (($d_nx[i] * $u_x[i]) ** 2))
      const $u_n = Math.sqrt(sum6)
      scalars[7] = $u_n
      let sum7 = 0
      for (let i = 0; i < rows; i += 1) sum7 += ((($d_Cy[i] * $u_y[i]) ** 2) + (($d_Cx[i] * $u_x[i]) ** 2))
      const $u_lnC = Math.sqrt(sum7)
      scalars[8] = $u_lnC
      let sum8 = 0
      for (let i = 0; i < rows; i += 1) sum8 += ((($d_ny[i] * $d_Cy[i]) * ($u_y[i] ** 2)) + (($d_nx[i] * $d_Cx[i]) * ($u_x[i] ** 2)))
      const $u_nC = sum8
      scalars[9] = $u_nC
    },
  },
  "Weighted least squares, errors in both variables": {
    constants: [],
    inputs: "x[] y[] u_x[] u_y[] n_b",
    steps: [
      ["w[]","1 ./ (u_y .^ 2 + n_b^2*u_x .^ 2)"],
      ["W","sum(w)"],
      ["xbar","sum(w .* x)/W"],
      ["ybar","sum(w .* y)/W"],
      ["b_x[]","w .* ((x - xbar) .* u_y .^ 2 + n_b*(y - ybar) .* u_x .^ 2)"],
      ["n","sum(w .* b_x .* (y - ybar))/sum(w .* b_x .* (x - xbar))"],
      ["n_d","n - n_b"],
      ["lnC","ybar - n*xbar"],
      ["x_a","xbar + sum(w .* b_x)/W"],
      ["u_n","1/sqrt(sum(w .* (b_x - (x_a - xbar)) .^ 2))"],
      ["u_lnC","sqrt(1/W + x_a^2*u_n^2)"],
      ["u_nC","0 - x_a*u_n^2"],
      ["S_r","sum(w .* (y - lnC - n*x) .^ 2)"],
      ["chi_r","S_r/(count(x) - 2)"],
    ],
    run: (scalars, columns, rows) => {
      const $x = columns[0]
      const $y = columns[1]
      const $u_x = columns[2]
      const $u_y = columns[3]
      const $n_b = scalars[0]
      const $w = []
      columns[4] = $w
      for (let i = 0; i < rows; i += 1) {
        $w.push((1 / (($u_y[i] ** 2) + (($n_b ** 2) * ($u_x[i] ** 2)))))
      }
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += $w[i]
      const $W = sum1
      scalars[1] = $W
      let sum2 = 0
      for (let i = 0; i < rows; i += 1) sum2 += ($w[i] * $x[i])
      const $xbar = (sum2 / $W)
      scalars[2] = $xbar
      let sum3 = 0
      for (let i = 0; i < rows; i += 1) sum3 += ($w[i] * $y[i])
      const $ybar = (sum3 / $W)
      scalars[3] = $ybar
      const $b_x = []
      columns[5] = $b_x
      for (let i = 0; i < rows; i += 1) {
        $b_x.push(($w[i] * ((($x[i] - $xbar) * ($u_y[i] ** 2)) + (($n_b * ($y[i] - $ybar)) * ($u_x[i] ** 2)))))
      }
      let sum4 = 0
      for (let i = 0; i < rows; i += 1) sum4 += (($w[i] * $b_x[i]) * ($y[i] - $ybar))
      let sum5 = 0
      for (let i = 0; i < rows; i += 1) sum5 += (($w[i] * $b_x[i]) * ($x[i] - $xbar))
      const $n = (sum4 / sum5)
      scalars[4] = $n
      const $n_d = ($n - $n_b)
      scalars[5] = $n_d
      const $lnC = ($ybar - ($n * $xbar))
      scalars[6] = $lnC
      let sum6 = 0
      for (let i = 0; i < rows; i += 1) sum6 += ($w[i] * $b_x[i])
      const $x_a = ($xbar + (sum6 / $W))
      scalars[7] = $x_a
      let sum7 = 0
      for (let i = 0; i < rows; i += 1) sum7 += ($w[i] * (($b_x[i] - ($x_a - $xbar)) ** 2))
      const $u_n = (1 / Math.sqrt(sum7))
      scalars[8] = $u_n
      const $u_lnC = Math.sqrt(((1 / $W) + (($x_a ** 2) * ($u_n ** 2))))
      scalars[9] = $u_lnC
      const $u_nC = (0 - ($x_a * ($u_n ** 2)))
      scalars[10] = $u_nC
      let sum8 = 0
      for (let i = 0; i < rows; i += 1) sum8 += ($w[i] * ((($y[i] - $lnC) - ($n * $x[i])) ** 2))
      const $S_r = sum8
      scalars[11] = $S_r
      const $chi_r = ($S_r / (countOf($x) - 2))
      scalars[12] = $chi_r
    },
  },
  "Two fits compared": {
    constants: [],
    inputs: "dp_r n lnC n_o lnC_o",
    steps: [
      ["C_b","exp(lnC_o)"],
      ["q_n","exp(lnC_o + n_o*log(dp_r))"],
      ["d_o","exp(lnC_o - lnC + (n_o - n)*log(dp_r)) - 1"],
    ],
    run: (scalars) => {
      const $dp_r = scalars[0]
      const $n = scalars[1]
      const $lnC = scalars[2]
      const $n_o = scalars[3]
      const $lnC_o = scalars[4]
      const $C_b = Math.exp($lnC_o)
      scalars[5] = $C_b
      const $q_n = Math.exp(($lnC_o + ($n_o * Math.log($dp_r))))
      scalars[6] = $q_n
      const $d_o = (Math.exp((($lnC_o - $lnC) + (($n_o - $n) * Math.log($dp_r)))) - 1)
      scalars[7] = $d_o
    },
  },
  "At a reference pressure, equivalent leakage area": {
    constants: ["rho_0","C_g","s_h","u_A"],
    inputs: "dp_r C_L n N xbar S_xx S_n t_95",
    steps: [
      ["q_pr","C_L*dp_r^n"],
      ["S_y","S_n*sqrt(((N - 1)/N)*S_xx + (log(dp_r) - xbar)^2)"],
      ["q_lo","q_pr*exp(-(t_95*S_y))"],
      ["q_hi","q_pr*exp(t_95*S_y)"],
      ["A_L","u_A*(1/s_h)/C_g*C_L*(rho_0/2)^0.5*dp_r^(n - 0.5)"],
      ["A_L_lo","A_L*exp(-(t_95*S_y))"],
      ["A_L_hi","A_L*exp(t_95*S_y)"],
    ],
    run: (scalars) => {
      const $rho_0 = scalars[0]
      const $C_g = scalars[1]
      const $s_h = scalars[2]
      const $u_A = scalars[3]
      const $dp_r = scalars[4]
      const $C_L = scalars[5]
      const $n = scalars[6]
      const $N = scalars[7]
      const $xbar = scalars[8]
      const $S_xx = scalars[9]
      const $S_n = scalars[10]
      const $t_95 = scalars[11]
      const $q_pr = ($C_L * ($dp_r ** $n))
      scalars[12] = $q_pr
      const $S_y = ($S_n * Math.sqrt((((($N - 1) / $N) * $S_xx) + ((Math.log($dp_r) - $xbar) ** 2))))
      scalars[13] = $S_y
      const $q_lo = ($q_pr * Math.exp((-($t_95 * $S_y))))
      scalars[14] = $q_lo
      const $q_hi = ($q_pr * Math.exp(($t_95 * $S_y)))
      scalars[15] = $q_hi
      const $A_L = ((((($u_A * (1 / $s_h)) / $C_g) * $C_L) * (($rho_0 / 2) ** 0.5)) * ($dp_r ** ($n - 0.5)))
      scalars[16] = $A_L
      const $A_L_lo = ($A_L * Math.exp((-($t_95 * $S_y))))
      scalars[17] = $A_L_lo
      const $A_L_hi = ($A_L * Math.exp(($t_95 * $S_y)))
      scalars[18] = $A_L_hi
    },
  },
  "One point": {
    constants: [],
    inputs: "dp_m[] q_m[] sign dp_01 dp_02 rho_d rho_x n_a",
    steps: [
      ["dp_0","(dp_01 + dp_02)/2"],
      ["dp[]","sign*(dp_m - dp_0)"],
      ["q_env[]","q_m*(rho_d/rho_x)"],
      ["x[]","log(dp)"],
      ["y[]","log(q_env)"],
      ["N","count(x)"],
      ["dp_1","mean(dp)"],
      ["q_1","mean(q_env)"],
      ["x_1","log(dp_1)"],
      ["n","n_a"],
      ["C_env","q_1/dp_1^n"],
      ["q_fit[]","C_env*dp .^ n"],
      ["SSE","sum((y - log(q_fit)) .^ 2)"],
    ],
    run: (scalars, columns, rows) => {
      const $dp_m = columns[0]
      const $q_m = columns[1]
      const $sign = scalars[0]
      const $dp_01 = scalars[1]
      const $dp_02 = scalars[2]
      const $rho_d = scalars[3]
      const $rho_x = scalars[4]
      const $n_a = scalars[5]
      const $dp_0 = (($dp_01 + $dp_02) / 2)
      scalars[6] = $dp_0
      const $dp = []
      columns[2] = $dp
      const $q_env = []
      columns[3] = $q_env
      const $x = []
      columns[4] = $x
      const $y = []
      columns[5] = $y
      for (let i = 0; i < rows; i += 1) {
        $dp.push(($sign * ($dp_m[i] - $dp_0)))
        $q_env.push(($q_m[i] * ($rho_d / $rho_x)))
        $x.push(Math.log($dp[i]))
        $y.push(Math.log($q_env[i]))
      }
      const $N = countOf($x)
      scalars[7] = $N
      const $dp_1 = meanOf($dp)
      scalars[8] = $dp_1
      const $q_1 = meanOf($q_env)
      scalars[9] = $q_1
      const $x_1 = Math.log($dp_1)
      scalars[10] = $x_1
      const $n = $n_a
      scalars[11] = $n
      const $C_env = ($q_1 / ($dp_1 ** $n))
      scalars[12] = $C_env
      const $q_fit = []
      columns[6] = $q_fit
      for (let i = 0; i < rows; i += 1) {
        $q_fit.push(($C_env * ($dp[i] ** $n)))
      }
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += (($y[i] - Math.log($q_fit[i])) ** 2)
      const $SSE = sum1
      scalars[13] = $SSE
    },
  },
  "Two points": {
    constants: [],
    inputs: "dp_m[] q_m[] sign dp_01 dp_02 rho_d rho_x hi[]",
    steps: [
      ["dp_0","(dp_01 + dp_02)/2"],
      ["dp[]","sign*(dp_m - dp_0)"],
      ["q_env[]","q_m*(rho_d/rho_x)"],
      ["x[]","log(dp)"],
      ["y[]","log(q_env)"],
      ["N","count(x)"],
      ["dp_1","sum(hi .* dp)/sum(hi)"],
      ["q_1","sum(hi .* q_env)/sum(hi)"],
      ["x_1","log(dp_1)"],
      ["dp_2","sum((1 - hi) .* dp)/sum(1 - hi)"],
      ["q_2","sum((1 - hi) .* q_env)/sum(1 - hi)"],
      ["x_2","log(dp_2)"],
      ["n","log(q_1/q_2)/log(dp_1/dp_2)"],
      ["C_env","q_1/dp_1^n"],
      ["q_fit[]","C_env*dp .^ n"],
      ["SSE","sum((y - log(q_fit)) .^ 2)"],
    ],
    run: (scalars, columns, rows) => {
      const $dp_m = columns[0]
      const $q_m = columns[1]
      const $sign = scalars[0]
      const $dp_01 = scalars[1]
      const $dp_02 = scalars[2]
      const $rho_d = scalars[3]
      const $rho_x = scalars[4]
      const $hi = columns[2]
      const $dp_0 = (($dp_01 + $dp_02) / 2)
      scalars[5] = $dp_0
      const $dp = []
      columns[3] = $dp
      const $q_env = []
      columns[4] = $q_env
      const $x = []
      columns[5] = $x
      const $y = []
      columns[6] = $y
      for (let i = 0; i < rows; i += 1) {
        $dp.push(($sign * ($dp_m[i] - $dp_0)))
        $q_env.push(($q_m[i] * ($rho_d / $rho_x)))
        $x.push(Math.log($dp[i]))
        $y.push(Math.log($q_env[i]))
      }
      const $N = countOf($x)
      scalars[6] = $N
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += ($hi[i] * $dp[i])
      let sum2 = 0
      for (let i = 0; i < rows; i += 1) sum2 += $hi[i]
      const $dp_1 = (sum1 / sum2)
      scalars[7] = $dp_1
      let sum3 = 0
      for (let i = 0; i < rows; i += 1) sum3 += ($hi[i] * $q_env[i])
      let sum4 = 0
      for (let i = 0; i < rows; i += 1) sum4 += $hi[i]
      const $q_1 = (sum3 / sum4)
      scalars[8] = $q_1
      const $x_1 = Math.log($dp_1)
      scalars[9] = $x_1
      let sum5 = 0
      for (let i = 0; i < rows; i += 1) sum5 += ((1 - $hi[i]) * $dp[i])
      let sum6 = 0
      for (let i = 0; i < rows; i += 1) sum6 += (1 - $hi[i])
      const $dp_2 = (sum5 / sum6)
      scalars[10] = $dp_2
      let sum7 = 0
      for (let i = 0; i < rows; i += 1) sum7 += ((1 - $hi[i]) * $q_env[i])
      let sum8 = 0
      for (let i = 0; i < rows; i += 1) sum8 += (1 - $hi[i])
      const $q_2 = (sum7 / sum8)
      scalars[11] = $q_2
      const $x_2 = Math.log($dp_2)
      scalars[12] = $x_2
      const $n = (Math.log(($q_1 / $q_2)) / Math.log(($dp_1 / $dp_2)))
      scalars[13] = $n
      const $C_env = ($q_1 / ($dp_1 ** $n))
      scalars[14] = $C_env
      const $q_fit = []
      columns[7] = $q_fit
      for (let i = 0; i < rows; i += 1) {
        $q_fit.push(($C_env * ($dp[i] ** $n)))
      }
      let sum9 = 0
      for (let i = 0; i < rows; i += 1) sum9 += (($y[i] - Math.log($q_fit[i])) ** 2)
      const $SSE = sum9
      scalars[15] = $SSE
    },
  },
  "One point, corrected for temperature and altitude": {
    constants: ["l_f","a_f"],
    inputs: "dp_m[] q_m[] sign dp_01 dp_02 n_a T_d T_x h k_f",
    steps: [
      ["f_T","sqrt(T_x/T_d)"],
      ["f_h","1 + a_f*h/l_f"],
      ["dp_0","(dp_01 + dp_02)/2"],
      ["dp[]","sign*(dp_m - dp_0)"],
      ["x[]","log(dp)"],
      ["q_env[]","q_m*(1 + k_f*(f_T*f_h - 1))"],
      ["y[]","log(q_env)"],
      ["N","count(x)"],
      ["dp_1","mean(dp)"],
      ["q_1","mean(q_env)"],
      ["x_1","log(dp_1)"],
      ["n","n_a"],
      ["C_env","q_1/dp_1^n"],
      ["q_fit[]","C_env*dp .^ n"],
      ["SSE","sum((y - log(q_fit)) .^ 2)"],
    ],
    run: (scalars, columns, rows) => {
      const $l_f = scalars[0]
      const $a_f = scalars[1]
      const $dp_m = columns[0]
      const $q_m = columns[1]
      const $sign = scalars[2]
      const $dp_01 = scalars[3]
      const $dp_02 = scalars[4]
      const $n_a = scalars[5]
      const $T_d = scalars[6]
      const $T_x = scalars[7]
      const $h = scalars[8]
      const $k_f = scalars[9]
      const $f_T = Math.sqrt(($T_x / $T_d))
      scalars[10] = $f_T
      const $f_h = (1 + (($a_f * $h) / $l_f))
      scalars[11] = $f_h
      const $dp_0 = (($dp_01 + $dp_02) / 2)
      scalars[12] = $dp_0
      const $dp = []
      columns[2] = $dp
      const $x = []
      columns[3] = $x
      const $q_env = []
      columns[4] = $q_env
      const $y = []
      columns[5] = $y
      for (let i = 0; i < rows; i += 1) {
        $dp.push(($sign * ($dp_m[i] - $dp_0)))
        $x.push(Math.log($dp[i]))
        $q_env.push(($q_m[i] * (1 + ($k_f * (($f_T * $f_h) - 1)))))
        $y.push(Math.log($q_env[i]))
      }
      const $N = countOf($x)
      scalars[13] = $N
      const $dp_1 = meanOf($dp)
      scalars[14] = $dp_1
      const $q_1 = meanOf($q_env)
      scalars[15] = $q_1
      const $x_1 = Math.log($dp_1)
      scalars[16] = $x_1
      const $n = $n_a
      scalars[17] = $n
      const $C_env = ($q_1 / ($dp_1 ** $n))
      scalars[18] = $C_env
      const $q_fit = []
      columns[6] = $q_fit
      for (let i = 0; i < rows; i += 1) {
        $q_fit.push(($C_env * ($dp[i] ** $n)))
      }
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += (($y[i] - Math.log($q_fit[i])) ** 2)
      const $SSE = sum1
      scalars[19] = $SSE
    },
  },
  "Reference air": {
    constants: [],
    inputs: "C_env",
    steps: [
      ["C_L","C_env"],
    ],
    run: (scalars) => {
      const $C_env = scalars[0]
      const $C_L = $C_env
      scalars[1] = $C_L
    },
  },
  "Extended result": {
    constants: ["k_ext"],
    inputs: "q_pr n_pr",
    steps: [
      ["q_ext","k_ext*q_pr"],
      ["n_ext","k_ext*n_pr"],
    ],
    run: (scalars) => {
      const $k_ext = scalars[0]
      const $q_pr = scalars[1]
      const $n_pr = scalars[2]
      const $q_ext = ($k_ext * $q_pr)
      scalars[3] = $q_ext
      const $n_ext = ($k_ext * $n_pr)
      scalars[4] = $n_ext
    },
  },
  "Correction to reference air density and viscosity": {
    constants: ["rho_0","T_z","b_mu","S_mu","theta_0"],
    inputs: "C_env C_lo C_hi n rho_x T_x",
    steps: [
      ["mu_x","b_mu*T_x^1.5/(T_x + S_mu)"],
      ["mu_0","b_mu*(T_z + theta_0)^1.5/(T_z + theta_0 + S_mu)"],
      ["f_rho","(mu_x/mu_0)^(2*n - 1)*(rho_x/rho_0)^(1 - n)"],
      ["k_n","2*log(mu_x/mu_0) - log(rho_x/rho_0)"],
      ["k_T","(2*n - 1)*(1.5/T_x - 1/(T_x + S_mu))"],
      ["C_L","C_env*f_rho"],
      ["C_L_lo","C_lo*f_rho"],
      ["C_L_hi","C_hi*f_rho"],
    ],
    run: (scalars) => {
      const $rho_0 = scalars[0]
      const $T_z = scalars[1]
      const $b_mu = scalars[2]
      const $S_mu = scalars[3]
      const $theta_0 = scalars[4]
      const $C_env = scalars[5]
      const $C_lo = scalars[6]
      const $C_hi = scalars[7]
      const $n = scalars[8]
      const $rho_x = scalars[9]
      const $T_x = scalars[10]
      const $mu_x = (($b_mu * ($T_x ** 1.5)) / ($T_x + $S_mu))
      scalars[11] = $mu_x
      const $mu_0 = (($b_mu * (($T_z + $theta_0) ** 1.5)) / (($T_z + $theta_0) + $S_mu))
      scalars[12] = $mu_0
      const $f_rho = ((($mu_x / $mu_0) ** ((2 * $n) - 1)) * (($rho_x / $rho_0) ** (1 - $n)))
      scalars[13] = $f_rho
      const $k_n = ((2 * Math.log(($mu_x / $mu_0))) - Math.log(($rho_x / $rho_0)))
      scalars[14] = $k_n
      const $k_T = (((2 * $n) - 1) * ((1.5 / $T_x) - (1 / ($T_x + $S_mu))))
      scalars[15] = $k_T
      const $C_L = ($C_env * $f_rho)
      scalars[16] = $C_L
      const $C_L_lo = ($C_lo * $f_rho)
      scalars[17] = $C_L_lo
      const $C_L_hi = ($C_hi * $f_rho)
      scalars[18] = $C_L_hi
    },
  },
  "Wind speed from wind force": {
    constants: [],
    inputs: "B_f",
    steps: [
      ["U_w","0.836*B_f^1.5"],
    ],
    run: (scalars) => {
      const $B_f = scalars[0]
      const $U_w = (0.836 * ($B_f ** 1.5))
      scalars[1] = $U_w
    },
  },
  "Wind at the house from wind at the station": {
    constants: [],
    inputs: "U_m",
    steps: [
      ["U_w","U_m*3/6"],
    ],
    run: (scalars) => {
      const $U_m = scalars[0]
      const $U_w = (($U_m * 3) / 6)
      scalars[1] = $U_w
    },
  },
  "Uncertainty from wind": {
    constants: ["rho_0"],
    inputs: "U_w k_w k_s",
    steps: [
      ["p_w","rho_0*U_w^2/2"],
      ["u_w","k_w*p_w"],
      ["v_w","(k_s*p_w)^2"],
      ["u_v","v_w/sqrt(3)"],
    ],
    run: (scalars) => {
      const $rho_0 = scalars[0]
      const $U_w = scalars[1]
      const $k_w = scalars[2]
      const $k_s = scalars[3]
      const $p_w = (($rho_0 * ($U_w ** 2)) / 2)
      scalars[4] = $p_w
      const $u_w = ($k_w * $p_w)
      scalars[5] = $u_w
      const $v_w = (($k_s * $p_w) ** 2)
      scalars[6] = $v_w
      const $u_v = ($v_w / Math.sqrt(3))
      scalars[7] = $u_v
    },
  },
  "Uncertainty from the stack pressure": {
    constants: ["g_n"],
    inputs: "rho_i rho_e h_b k_t k_h",
    steps: [
      ["p_t","abs(rho_e - rho_i)*g_n*h_b"],
      ["u_t","k_t*p_t"],
      ["v_t","k_h*p_t^2"],
      ["u_tv","v_t/sqrt(3)"],
    ],
    run: (scalars) => {
      const $g_n = scalars[0]
      const $rho_i = scalars[1]
      const $rho_e = scalars[2]
      const $h_b = scalars[3]
      const $k_t = scalars[4]
      const $k_h = scalars[5]
      const $p_t = ((Math.abs(($rho_e - $rho_i)) * $g_n) * $h_b)
      scalars[6] = $p_t
      const $u_t = ($k_t * $p_t)
      scalars[7] = $u_t
      const $v_t = ($k_h * ($p_t ** 2))
      scalars[8] = $v_t
      const $u_tv = ($v_t / Math.sqrt(3))
      scalars[9] = $u_tv
    },
  },
  "Openings of unlike exponents": {
    constants: [],
    inputs: "s_l",
    steps: [
      ["k_c","s_l^2"],
      ["u_k","k_c/sqrt(3)"],
    ],
    run: (scalars) => {
      const $s_l = scalars[0]
      const $k_c = ($s_l ** 2)
      scalars[1] = $k_c
      const $u_k = ($k_c / Math.sqrt(3))
      scalars[2] = $u_k
    },
  },
  "Sensitivities of the air density": {
    constants: ["k_v","b_v","c_v"],
    inputs: "T p_v phi p_bar",
    steps: [
      ["p_d","p_bar - k_v*p_v"],
      ["g_T","0 - 1/T - k_v*p_v*(b_v/T^2 - c_v/T)/p_d"],
      ["g_p","1/p_d"],
      ["g_h","0 - k_v*(p_v/phi)/p_d"],
    ],
    run: (scalars) => {
      const $k_v = scalars[0]
      const $b_v = scalars[1]
      const $c_v = scalars[2]
      const $T = scalars[3]
      const $p_v = scalars[4]
      const $phi = scalars[5]
      const $p_bar = scalars[6]
      const $p_d = ($p_bar - ($k_v * $p_v))
      scalars[7] = $p_d
      const $g_T = ((0 - (1 / $T)) - ((($k_v * $p_v) * (($b_v / ($T ** 2)) - ($c_v / $T))) / $p_d))
      scalars[8] = $g_T
      const $g_p = (1 / $p_d)
      scalars[9] = $g_p
      const $g_h = (0 - (($k_v * ($p_v / $phi)) / $p_d))
      scalars[10] = $g_h
    },
  },
  "Correction to reference density and the exponent": {
    constants: ["rho_0"],
    inputs: "rho_x",
    steps: [
      ["k_n","0 - log(rho_x/rho_0)"],
    ],
    run: (scalars) => {
      const $rho_0 = scalars[0]
      const $rho_x = scalars[1]
      const $k_n = (0 - Math.log(($rho_x / $rho_0)))
      scalars[2] = $k_n
    },
  },
  "Scatter of the zero-flow pressure": {
    constants: [],
    inputs: "dp_z[] dp_m0",
    steps: [
      ["v_z","sum((dp_z - dp_m0) .^ 2)/((count(dp_z) - 1)*count(dp_z))"],
    ],
    run: (scalars, columns, rows) => {
      const $dp_z = columns[0]
      const $dp_m0 = scalars[0]
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += (($dp_z[i] - $dp_m0) ** 2)
      const $v_z = (sum1 / ((countOf($dp_z) - 1) * countOf($dp_z)))
      scalars[1] = $v_z
    },
  },
  "Change of the zero-flow pressure": {
    constants: [],
    inputs: "dp_01[] dp_02[]",
    steps: [
      ["s_d","sum((dp_01 - dp_02) .^ 2)/4"],
      ["N_d","count(dp_01)"],
    ],
    run: (scalars, columns, rows) => {
      const $dp_01 = columns[0]
      const $dp_02 = columns[1]
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += (($dp_01[i] - $dp_02[i]) ** 2)
      const $s_d = (sum1 / 4)
      scalars[0] = $s_d
      const $N_d = countOf($dp_01)
      scalars[1] = $N_d
    },
  },
  "Uncertainty of the zero-flow pressure": {
    constants: [],
    inputs: "v_1 v_2 s_d N_d p_w k_0 u_z",
    steps: [
      ["nu_0","4 + N_d"],
      ["v_p","(4*(k_0*p_w)^2 + s_d)/nu_0"],
      ["v_c","max((v_1 + v_2)/4, v_p)"],
      ["u_0","sqrt(v_c + u_z^2)"],
      ["r_0","v_c^2/nu_0"],
    ],
    run: (scalars) => {
      const $v_1 = scalars[0]
      const $v_2 = scalars[1]
      const $s_d = scalars[2]
      const $N_d = scalars[3]
      const $p_w = scalars[4]
      const $k_0 = scalars[5]
      const $u_z = scalars[6]
      const $nu_0 = (4 + $N_d)
      scalars[7] = $nu_0
      const $v_p = (((4 * (($k_0 * $p_w) ** 2)) + $s_d) / $nu_0)
      scalars[8] = $v_p
      const $v_c = Math.max((($v_1 + $v_2) / 4), $v_p)
      scalars[9] = $v_c
      const $u_0 = Math.sqrt(($v_c + ($u_z ** 2)))
      scalars[10] = $u_0
      const $r_0 = (($v_c ** 2) / $nu_0)
      scalars[11] = $r_0
    },
  },
  "Expected scatter of the readings": {
    constants: [],
    inputs: "dp[] u_p[]",
    steps: [
      ["u_x[]","u_p ./ dp"],
    ],
    run: (scalars, columns, rows) => {
      const $dp = columns[0]
      const $u_p = columns[1]
      const $u_x = []
      columns[2] = $u_x
      for (let i = 0; i < rows; i += 1) {
        $u_x.push(($u_p[i] / $dp[i]))
      }
    },
  },
  "Relative uncertainty": {
    constants: [],
    inputs: "u_V V",
    steps: [
      ["u","u_V/V"],
    ],
    run: (scalars) => {
      const $u_V = scalars[0]
      const $V = scalars[1]
      const $u = ($u_V / $V)
      scalars[2] = $u
    },
  },
  "Standard uncertainty from a stated accuracy": {
    constants: [],
    inputs: "a_u",
    steps: [
      ["u_a","a_u/sqrt(3)"],
    ],
    run: (scalars) => {
      const $a_u = scalars[0]
      const $u_a = ($a_u / Math.sqrt(3))
      scalars[1] = $u_a
    },
  },
  "Relative standard uncertainty from a stated accuracy": {
    constants: [],
    inputs: "a_r a_a v_r[]",
    steps: [
      ["a_l","max(a_r, a_a/mean(v_r))"],
      ["u_l","a_l/sqrt(3)"],
    ],
    run: (scalars, columns, rows) => {
      const $a_r = scalars[0]
      const $a_a = scalars[1]
      const $v_r = columns[0]
      const $a_l = Math.max($a_r, ($a_a / meanOf($v_r)))
      scalars[2] = $a_l
      const $u_l = ($a_l / Math.sqrt(3))
      scalars[3] = $u_l
    },
  },
  "Scatter of the averaged flows": {
    constants: [],
    inputs: "q_m[] u_q[]",
    steps: [
      ["u_y[]","u_q ./ q_m"],
    ],
    run: (scalars, columns, rows) => {
      const $q_m = columns[0]
      const $u_q = columns[1]
      const $u_y = []
      columns[2] = $u_y
      for (let i = 0; i < rows; i += 1) {
        $u_y.push(($u_q[i] / $q_m[i]))
      }
    },
  },
  "Scatter of the flows from averaged device pressures": {
    constants: [],
    inputs: "dp_d[] u_d[] m_d[]",
    steps: [
      ["u_y[]","m_d .* u_d ./ abs(dp_d)"],
    ],
    run: (scalars, columns, rows) => {
      const $dp_d = columns[0]
      const $u_d = columns[1]
      const $m_d = columns[2]
      const $u_y = []
      columns[3] = $u_y
      for (let i = 0; i < rows; i += 1) {
        $u_y.push((($m_d[i] * $u_d[i]) / Math.abs($dp_d[i])))
      }
    },
  },
  "Sensitivities of the leakage rate": {
    constants: [],
    inputs: "dp[] u_x[] u_y[] a_d[] o_r[] n dp_r k_n k_T d_s g_Td g_Tx g_pd g_px g_hd g_hx x[] y[] w[] N xbar ybar S_xx SSE",
    steps: [
      ["L_r","log(dp_r) + k_n"],
      ["c_y[]","w .* (1/N + (L_r - xbar)*(x - xbar)/((N - 1)*S_xx))"],
      ["c_x[]","w .* ((L_r - xbar)*((y - ybar) - 2*n*(x - xbar))/((N - 1)*S_xx) - n/N)"],
      ["s_g","sum(c_x)"],
      ["s_r","sum(c_y .* o_r)"],
      ["s_0","0 - sum(c_x ./ dp)"],
      ["s_w","(0 - d_s)*s_0"],
      ["s_v","n*(n - 1)/2*sum(c_y ./ dp .^ 2)"],
      ["s_m","0.5*sum(c_y .* (log(dp) - log(dp_r)) .^ 2)"],
      ["s_d","sum(c_y .* a_d)"],
      ["s_x","0 - n"],
      ["s_Td","s_d*g_Td"],
      ["s_Tx","s_x*g_Tx + k_T"],
      ["s_p","s_d*g_pd + s_x*g_px"],
      ["s_hd","s_d*g_hd"],
      ["s_hx","s_x*g_hx"],
      ["u_b","sqrt(sum((c_x .* u_x) .^ 2 + (c_y .* u_y) .^ 2))"],
      ["d_x[]","x - xbar"],
      ["h_x[]","w .* (1/N + d_x .^ 2/((N - 1)*S_xx))"],
      ["SSE_0","sum(w .* (1 - h_x) .* ((n*u_x) .^ 2 + u_y .^ 2))"],
      ["t_g[]","w .* (n ./ dp) .^ 2"],
      ["E_g","sum(t_g .* (1 - h_x))"],
      ["v_g","max(0, (SSE - SSE_0)/E_g)"],
      ["V_g","sum(t_g .^ 2 .* (1 - 2*h_x)) + (sum(w .* t_g)/N)^2 + 2*sum(w .* t_g .* d_x)^2/(N*(N - 1)*S_xx) + (sum(w .* t_g .* d_x .^ 2)/((N - 1)*S_xx))^2"],
      ["nu_s","max(1, E_g^2/V_g)"],
      ["u_s","sqrt(v_g*sum((c_x ./ dp) .^ 2))"],
      ["f_xx[]","w .* ((L_r - xbar)*(4*n*w .* d_x .^ 2/((N - 1)*S_xx) - 2*n*(1 - w/N)) + 2*n*w .* d_x/N)/((N - 1)*S_xx)"],
      ["b_r","0.5*sum((f_xx - c_x) .* (u_x .^ 2 + v_g ./ dp .^ 2))"],
      ["u_r","sqrt(u_b^2 + u_s^2)"],
      ["r_r","u_s^4/nu_s"],
    ],
    run: (scalars, columns, rows) => {
      const $dp = columns[0]
      const $u_x = columns[1]
      const $u_y = columns[2]
      const $a_d = columns[3]
      const $o_r = columns[4]
      const $n = scalars[0]
      const $dp_r = scalars[1]
      const $k_n = scalars[2]
      const $k_T = scalars[3]
      const $d_s = scalars[4]
      const $g_Td = scalars[5]
      const $g_Tx = scalars[6]
      const $g_pd = scalars[7]
      const $g_px = scalars[8]
      const $g_hd = scalars[9]
      const $g_hx = scalars[10]
      const $x = columns[5]
      const $y = columns[6]
      const $w = columns[7]
      const $N = scalars[11]
      const $xbar = scalars[12]
      const $ybar = scalars[13]
      const $S_xx = scalars[14]
      const $SSE = scalars[15]
      const $L_r = (Math.log($dp_r) + $k_n)
      scalars[16] = $L_r
      const $c_y = []
      columns[8] = $c_y
      const $c_x = []
      columns[9] = $c_x
      for (let i = 0; i < rows; i += 1) {
        $c_y.push(($w[i] * ((1 / $N) + ((($L_r - $xbar) * ($x[i] - $xbar)) / (($N - 1) * $S_xx)))))
        $c_x.push(($w[i] * (((($L_r - $xbar) * (($y[i] - $ybar) - ((2 * $n) * ($x[i] - $xbar)))) / (($N - 1) * $S_xx)) - ($n / $N))))
      }
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += $c_x[i]
      const $s_g = sum1
      scalars[17] = $s_g
      let sum2 = 0
      for (let i = 0; i < rows; i += 1) sum2 += ($c_y[i] * $o_r[i])
      const $s_r = sum2
      scalars[18] = $s_r
      let sum3 = 0
      for (let i = 0; i < rows; i += 1) sum3 += ($c_x[i] / $dp[i])
      const $s_0 = (0 - sum3)
      scalars[19] = $s_0
      const $s_w = ((0 - $d_s) * $s_0)
      scalars[20] = $s_w
      let sum4 = 0
      for (let i = 0; i < rows; i += 1) sum4 += ($c_y[i] / ($dp[i] ** 2))
      const $s_v = ((($n * ($n - 1)) / 2) * sum4)
      scalars[21] = $s_v
      let sum5 = 0
      for (let i = 0; i < rows; i += 1) sum5 += ($c_y[i] * ((Math.log($dp[i]) - Math.log($dp_r)) ** 2))
      const $s_m = (0.5 * sum5)
      scalars[22] = $s_m
      let sum6 = 0
      for (let i = 0; i < rows; i += 1) sum6 += ($c_y[i] * $a_d[i])
      const $s_d = sum6
      scalars[23] = $s_d
      const $s_x = (0 - $n)
      scalars[24] = $s_x
      const $s_Td = ($s_d * $g_Td)
      scalars[25] = $s_Td
      const $s_Tx = (($s_x * $g_Tx) + $k_T)
      scalars[26] = $s_Tx
      const $s_p = (($s_d * $g_pd) + ($s_x * $g_px))
      scalars[27] = $s_p
      const $s_hd = ($s_d * $g_hd)
      scalars[28] = $s_hd
      const $s_hx = ($s_x * $g_hx)
      scalars[29] = $s_hx
      let sum7 = 0
      for (let i = 0; i < rows; i += 1) sum7 += ((($c_x[i] * $u_x[i]) ** 2) + (($c_y[i] * $u_y[i]) ** 2))
      const $u_b = Math.sqrt(sum7)
      scalars[30] = $u_b
      const $d_x = []
      columns[10] = $d_x
      const $h_x = []
      columns[11] = $h_x
      for (let i = 0; i < rows; i += 1) {
        $d_x.push(($x[i] - $xbar))
        $h_x.push(($w[i] * ((1 / $N) + (($d_x[i] ** 2) / (($N - 1) * $S_xx)))))
      }
      let sum8 = 0
      for (let i = 0; i < rows; i += 1) sum8 += (($w[i] * (1 - $h_x[i])) * ((($n * $u_x[i]) ** 2) + ($u_y[i] ** 2)))
      const $SSE_0 = sum8
      scalars[31] = $SSE_0
      const $t_g = []
      columns[12] = $t_g
      for (let i = 0; i < rows; i += 1) {
        $t_g.push(($w[i] * (($n / $dp[i]) ** 2)))
      }
      let sum9 = 0
      for (let i = 0; i < rows; i += 1) sum9 += ($t_g[i] * (1 - $h_x[i]))
      const $E_g = sum9
      scalars[32] = $E_g
      const $v_g = Math.max(0, (($SSE - $SSE_0) / $E_g))
      scalars[33] = $v_g
      let sum10 = 0
      for (let i = 0; i < rows; i += 1) sum10 += (($t_g[i] ** 2) * (1 - (2 * $h_x[i])))
      let sum11 = 0
      for (let i = 0; i < rows; i += 1) sum11 += ($w[i] * $t_g[i])
      let sum12 = 0
      for (let i = 0; i < rows; i += 1) sum12 += (($w[i] * $t_g[i]) * $d_x[i])
      let sum13 = 0
      for (let i = 0; i < rows; i += 1) sum13 += (($w[i] * $t_g[i]) * ($d_x[i] ** 2))
      const $V_g = (((sum10 + ((sum11 / $N) ** 2)) + ((2 * (sum12 ** 2)) / (($N * ($N - 1)) * $S_xx))) + ((sum13 / (($N - 1) * $S_xx)) ** 2))
      scalars[34] = $V_g
      const $nu_s = Math.max(1, (($E_g ** 2) / $V_g))
      scalars[35] = $nu_s
      let sum14 = 0
      for (let i = 0; i < rows; i += 1) sum14 += (($c_x[i] / $dp[i]) ** 2)
      const $u_s = Math.sqrt(($v_g * sum14))
      scalars[36] = $u_s
      const $f_xx = []
      columns[13] = $f_xx
      for (let i = 0; i < rows; i += 1) {
        $f_xx.push((($w[i] * ((($L_r - $xbar) * (((((4 * $n) * $w[i]) * ($d_x[i] ** 2)) / (($N - 1) * $S_xx)) - ((2 * $n) * (1 - ($w[i] / $N))))) + ((((2 * $n) * $w[i]) * $d_x[i]) / $N))) / (($N - 1) * $S_xx)))
      }
      let sum15 = 0
      for (let i = 0; i < rows; i += 1) sum15 += (($f_xx[i] - $c_x[i]) * (($u_x[i] ** 2) + ($v_g / ($dp[i] ** 2))))
      const $b_r = (0.5 * sum15)
      scalars[37] = $b_r
      const $u_r = Math.sqrt((($u_b ** 2) + ($u_s ** 2)))
      scalars[38] = $u_r
      const $r_r = (($u_s ** 4) / $nu_s)
      scalars[39] = $r_r
    },
  },
  "Sensitivities of the leakage rate, one point": {
    constants: [],
    inputs: "dp[] u_x[] u_y[] a_d[] o_r[] n dp_r k_n k_T d_s g_Td g_Tx g_pd g_px g_hd g_hx q_env[] x_1 N SSE",
    steps: [
      ["c_y[]","q_env/sum(q_env)"],
      ["c_x[]","(0 - n)*dp/sum(dp)"],
      ["L_r","log(dp_r) + k_n"],
      ["s_g","sum(c_x)"],
      ["s_r","sum(c_y .* o_r)"],
      ["s_0","0 - sum(c_x ./ dp)"],
      ["s_w","(0 - d_s)*s_0"],
      ["s_v","n*(n - 1)/2*sum(c_y ./ dp .^ 2)"],
      ["s_m","0.5*sum(c_y .* (log(dp) - log(dp_r)) .^ 2)"],
      ["s_d","sum(c_y .* a_d)"],
      ["s_x","0 - n"],
      ["s_Td","s_d*g_Td"],
      ["s_Tx","s_x*g_Tx + k_T"],
      ["s_p","s_d*g_pd + s_x*g_px"],
      ["s_hd","s_d*g_hd"],
      ["s_hx","s_x*g_hx"],
      ["u_b","sqrt(sum((c_x .* u_x) .^ 2 + (c_y .* u_y) .^ 2))"],
      ["s_n","L_r - x_1"],
      ["nu_s","max(N - 1, 1)"],
      ["s_e","sqrt(SSE/nu_s)"],
      ["u_s","s_e*sqrt(sum(c_y .^ 2))"],
      ["u_r","max(u_s, u_b)"],
      ["r_r","u_s^4/nu_s"],
    ],
    run: (scalars, columns, rows) => {
      const $dp = columns[0]
      const $u_x = columns[1]
      const $u_y = columns[2]
      const $a_d = columns[3]
      const $o_r = columns[4]
      const $n = scalars[0]
      const $dp_r = scalars[1]
      const $k_n = scalars[2]
      const $k_T = scalars[3]
      const $d_s = scalars[4]
      const $g_Td = scalars[5]
      const $g_Tx = scalars[6]
      const $g_pd = scalars[7]
      const $g_px = scalars[8]
      const $g_hd = scalars[9]
      const $g_hx = scalars[10]
      const $q_env = columns[5]
      const $x_1 = scalars[11]
      const $N = scalars[12]
      const $SSE = scalars[13]
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += $q_env[i]
      const $c_y = []
      columns[6] = $c_y
      for (let i = 0; i < rows; i += 1) {
        $c_y.push(($q_env[i] / sum1))
      }
      let sum2 = 0
      for (let i = 0; i < rows; i += 1) sum2 += $dp[i]
      const $c_x = []
      columns[7] = $c_x
      const $L_r = (Math.log($dp_r) + $k_n)
      scalars[14] = $L_r
      for (let i = 0; i < rows; i += 1) {
        $c_x.push((((0 - $n) * $dp[i]) / sum2))
      }
      let sum3 = 0
      for (let i = 0; i < rows; i += 1) sum3 += $c_x[i]
      const $s_g = sum3
      scalars[15] = $s_g
      let sum4 = 0
      for (let i = 0; i < rows; i += 1) sum4 += ($c_y[i] * $o_r[i])
      const $s_r = sum4
      scalars[16] = $s_r
      let sum5 = 0
      for (let i = 0; i < rows; i += 1) sum5 += ($c_x[i] / $dp[i])
      const $s_0 = (0 - sum5)
      scalars[17] = $s_0
      const $s_w = ((0 - $d_s) * $s_0)
      scalars[18] = $s_w
      let sum6 = 0
      for (let i = 0; i < rows; i += 1) sum6 += ($c_y[i] / ($dp[i] ** 2))
      const $s_v = ((($n * ($n - 1)) / 2) * sum6)
      scalars[19] = $s_v
      let sum7 = 0
      for (let i = 0; i < rows; i += 1) sum7 += ($c_y[i] * ((Math.log($dp[i]) - Math.log($dp_r)) ** 2))
      const $s_m = (0.5 * sum7)
      scalars[20] = $s_m
      let sum8 = 0
      for (let i = 0; i < rows; i += 1) sum8 += ($c_y[i] * $a_d[i])
      const $s_d = sum8
      scalars[21] = $s_d
      const $s_x = (0 - $n)
      scalars[22] = $s_x
      const $s_Td = ($s_d * $g_Td)
      scalars[23] = $s_Td
      const $s_Tx = (($s_x * $g_Tx) + $k_T)
      scalars[24] = $s_Tx
      const $s_p = (($s_d * $g_pd) + ($s_x * $g_px))
      scalars[25] = $s_p
      const $s_hd = ($s_d * $g_hd)
      scalars[26] = $s_hd
      const $s_hx = ($s_x * $g_hx)
      scalars[27] = $s_hx
      let sum9 = 0
      for (let i = 0; i < rows; i += 1) sum9 += ((($c_x[i] * $u_x[i]) ** 2) + (($c_y[i] * $u_y[i]) ** 2))
      const $u_b = Math.sqrt(sum9)
      scalars[28] = $u_b
      const $s_n = ($L_r - $x_1)
      scalars[29] = $s_n
      const $nu_s = Math.max(($N - 1), 1)
      scalars[30] = $nu_s
      const $s_e = Math.sqrt(($SSE / $nu_s))
      scalars[31] = $s_e
      let sum10 = 0
      for (let i = 0; i < rows; i += 1) sum10 += ($c_y[i] ** 2)
      const $u_s = ($s_e * Math.sqrt(sum10))
      scalars[32] = $u_s
      const $u_r = Math.max($u_s, $u_b)
      scalars[33] = $u_r
      const $r_r = (($u_s ** 4) / $nu_s)
      scalars[34] = $r_r
    },
  },
  "Sensitivities of the leakage rate, two points": {
    constants: [],
    inputs: "dp[] u_x[] u_y[] a_d[] o_r[] n dp_r k_n k_T d_s g_Td g_Tx g_pd g_px g_hd g_hx q_env[] hi[] x_1 x_2 N SSE",
    steps: [
      ["L_r","log(dp_r) + k_n"],
      ["f_1","(L_r - x_2)/(x_1 - x_2)"],
      ["c_y[]","f_1*hi .* q_env/sum(hi .* q_env) + (1 - f_1)*(1 - hi) .* q_env/sum((1 - hi) .* q_env)"],
      ["c_x[]","(0 - n)*(f_1*hi .* dp/sum(hi .* dp) + (1 - f_1)*(1 - hi) .* dp/sum((1 - hi) .* dp))"],
      ["s_g","sum(c_x)"],
      ["s_r","sum(c_y .* o_r)"],
      ["s_0","0 - sum(c_x ./ dp)"],
      ["s_w","(0 - d_s)*s_0"],
      ["s_v","n*(n - 1)/2*sum(c_y ./ dp .^ 2)"],
      ["s_m","0.5*sum(c_y .* (log(dp) - log(dp_r)) .^ 2)"],
      ["s_d","sum(c_y .* a_d)"],
      ["s_x","0 - n"],
      ["s_Td","s_d*g_Td"],
      ["s_Tx","s_x*g_Tx + k_T"],
      ["s_p","s_d*g_pd + s_x*g_px"],
      ["s_hd","s_d*g_hd"],
      ["s_hx","s_x*g_hx"],
      ["u_b","sqrt(sum((c_x .* u_x) .^ 2 + (c_y .* u_y) .^ 2))"],
      ["nu_s","max(N - 2, 1)"],
      ["s_e","sqrt(SSE/nu_s)"],
      ["u_s","s_e*sqrt(sum(c_y .^ 2))"],
      ["u_r","max(u_s, u_b)"],
      ["r_r","u_s^4/nu_s"],
    ],
    run: (scalars, columns, rows) => {
      const $dp = columns[0]
      const $u_x = columns[1]
      const $u_y = columns[2]
      const $a_d = columns[3]
      const $o_r = columns[4]
      const $n = scalars[0]
      const $dp_r = scalars[1]
      const $k_n = scalars[2]
      const $k_T = scalars[3]
      const $d_s = scalars[4]
      const $g_Td = scalars[5]
      const $g_Tx = scalars[6]
      const $g_pd = scalars[7]
      const $g_px = scalars[8]
      const $g_hd = scalars[9]
      const $g_hx = scalars[10]
      const $q_env = columns[5]
      const $hi = columns[6]
      const $x_1 = scalars[11]
      const $x_2 = scalars[12]
      const $N = scalars[13]
      const $SSE = scalars[14]
      const $L_r = (Math.log($dp_r) + $k_n)
      scalars[15] = $L_r
      const $f_1 = (($L_r - $x_2) / ($x_1 - $x_2))
      scalars[16] = $f_1
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += ($hi[i] * $q_env[i])
      let sum2 = 0
      for (let i = 0; i < rows; i += 1) sum2 += ((1 - $hi[i]) * $q_env[i])
      const $c_y = []
      columns[7] = $c_y
      for (let i = 0; i < rows; i += 1) {
        $c_y.push((((($f_1 * $hi[i]) * $q_env[i]) / sum1) + ((((1 - $f_1) * (1 - $hi[i])) * $q_env[i]) / sum2)))
      }
      let sum3 = 0
      for (let i = 0; i < rows; i += 1) sum3 += ($hi[i] * $dp[i])
      let sum4 = 0
      for (let i = 0; i < rows; i += 1) sum4 += ((1 - $hi[i]) * $dp[i])
      const $c_x = []
      columns[8] = $c_x
      for (let i = 0; i < rows; i += 1) {
        $c_x.push(((0 - $n) * (((($f_1 * $hi[i]) * $dp[i]) / sum3) + ((((1 - $f_1) * (1 - $hi[i])) * $dp[i]) / sum4))))
      }
      let sum5 = 0
      for (let i = 0; i < rows; i += 1) sum5 += $c_x[i]
      const $s_g = sum5
      scalars[17] = $s_g
      let sum6 = 0
      for (let i = 0; i < rows; i += 1) sum6 += ($c_y[i] * $o_r[i])
      const $s_r = sum6
      scalars[18] = $s_r
      let sum7 = 0
      for (let i = 0; i < rows; i += 1) sum7 += ($c_x[i] / $dp[i])
      const $s_0 = (0 - sum7)
      scalars[19] = $s_0
      const $s_w = ((0 - $d_s) * $s_0)
      scalars[20] = $s_w
      let sum8 = 0
      for (let i = 0; i < rows; i += 1) sum8 += ($c_y[i] / ($dp[i] ** 2))
      const $s_v = ((($n * ($n - 1)) / 2) * sum8)
      scalars[21] = $s_v
      let sum9 = 0
      for (let i = 0; i < rows; i += 1) sum9 += ($c_y[i] * ((Math.log($dp[i]) - Math.log($dp_r)) ** 2))
      const $s_m = (0.5 * sum9)
      scalars[22] = $s_m
      let sum10 = 0
      for (let i = 0; i < rows; i += 1) sum10 += ($c_y[i] * $a_d[i])
      const $s_d = sum10
      scalars[23] = $s_d
      const $s_x = (0 - $n)
      scalars[24] = $s_x
      const $s_Td = ($s_d * $g_Td)
      scalars[25] = $s_Td
      const $s_Tx = (($s_x * $g_Tx) + $k_T)
      scalars[26] = $s_Tx
      const $s_p = (($s_d * $g_pd) + ($s_x * $g_px))
      scalars[27] = $s_p
      const $s_hd = ($s_d * $g_hd)
      scalars[28] = $s_hd
      const $s_hx = ($s_x * $g_hx)
      scalars[29] = $s_hx
      let sum11 = 0
      for (let i = 0; i < rows; i += 1) sum11 += ((($c_x[i] * $u_x[i]) ** 2) + (($c_y[i] * $u_y[i]) ** 2))
      const $u_b = Math.sqrt(sum11)
      scalars[30] = $u_b
      const $nu_s = Math.max(($N - 2), 1)
      scalars[31] = $nu_s
      const $s_e = Math.sqrt(($SSE / $nu_s))
      scalars[32] = $s_e
      let sum12 = 0
      for (let i = 0; i < rows; i += 1) sum12 += ($c_y[i] ** 2)
      const $u_s = ($s_e * Math.sqrt(sum12))
      scalars[33] = $u_s
      const $u_r = Math.max($u_s, $u_b)
      scalars[34] = $u_r
      const $r_r = (($u_s ** 4) / $nu_s)
      scalars[35] = $r_r
    },
  },
  "Sensitivities of the mean of the directions": {
    constants: [],
    inputs: "q_r[] s_0[] s_r[] s_g[] s_w[] s_v[] s_m[] s_Ti[] s_Te[] s_p[] s_hi[] s_he[] s_n[] f_s[]",
    steps: [
      ["g[]","q_r/sum(q_r)"],
      ["c_0[]","g .* s_0"],
      ["c_r","sum(g .* s_r)"],
      ["c_g","sum(g .* s_g)"],
      ["c_w","sum(g .* s_w)"],
      ["c_v","sum(g .* s_v)"],
      ["c_m","sum(g .* s_m)"],
      ["c_Ti","sum(g .* s_Ti)"],
      ["c_Te","sum(g .* s_Te)"],
      ["c_p","sum(g .* s_p)"],
      ["c_hi","sum(g .* s_hi)"],
      ["c_he","sum(g .* s_he)"],
      ["c_n","sum(g .* s_n)"],
      ["c_s","sum(g .* f_s)"],
    ],
    run: (scalars, columns, rows) => {
      const $q_r = columns[0]
      const $s_0 = columns[1]
      const $s_r = columns[2]
      const $s_g = columns[3]
      const $s_w = columns[4]
      const $s_v = columns[5]
      const $s_m = columns[6]
      const $s_Ti = columns[7]
      const $s_Te = columns[8]
      const $s_p = columns[9]
      const $s_hi = columns[10]
      const $s_he = columns[11]
      const $s_n = columns[12]
      const $f_s = columns[13]
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += $q_r[i]
      const $g = []
      columns[14] = $g
      const $c_0 = []
      columns[15] = $c_0
      for (let i = 0; i < rows; i += 1) {
        $g.push(($q_r[i] / sum1))
        $c_0.push(($g[i] * $s_0[i]))
      }
      let sum2 = 0
      for (let i = 0; i < rows; i += 1) sum2 += ($g[i] * $s_r[i])
      const $c_r = sum2
      scalars[0] = $c_r
      let sum3 = 0
      for (let i = 0; i < rows; i += 1) sum3 += ($g[i] * $s_g[i])
      const $c_g = sum3
      scalars[1] = $c_g
      let sum4 = 0
      for (let i = 0; i < rows; i += 1) sum4 += ($g[i] * $s_w[i])
      const $c_w = sum4
      scalars[2] = $c_w
      let sum5 = 0
      for (let i = 0; i < rows; i += 1) sum5 += ($g[i] * $s_v[i])
      const $c_v = sum5
      scalars[3] = $c_v
      let sum6 = 0
      for (let i = 0; i < rows; i += 1) sum6 += ($g[i] * $s_m[i])
      const $c_m = sum6
      scalars[4] = $c_m
      let sum7 = 0
      for (let i = 0; i < rows; i += 1) sum7 += ($g[i] * $s_Ti[i])
      const $c_Ti = sum7
      scalars[5] = $c_Ti
      let sum8 = 0
      for (let i = 0; i < rows; i += 1) sum8 += ($g[i] * $s_Te[i])
      const $c_Te = sum8
      scalars[6] = $c_Te
      let sum9 = 0
      for (let i = 0; i < rows; i += 1) sum9 += ($g[i] * $s_p[i])
      const $c_p = sum9
      scalars[7] = $c_p
      let sum10 = 0
      for (let i = 0; i < rows; i += 1) sum10 += ($g[i] * $s_hi[i])
      const $c_hi = sum10
      scalars[8] = $c_hi
      let sum11 = 0
      for (let i = 0; i < rows; i += 1) sum11 += ($g[i] * $s_he[i])
      const $c_he = sum11
      scalars[9] = $c_he
      let sum12 = 0
      for (let i = 0; i < rows; i += 1) sum12 += ($g[i] * $s_n[i])
      const $c_n = sum12
      scalars[10] = $c_n
      let sum13 = 0
      for (let i = 0; i < rows; i += 1) sum13 += ($g[i] * $f_s[i])
      const $c_s = sum13
      scalars[11] = $c_s
    },
  },
  "Uncertainty budget": {
    constants: ["alpha"],
    inputs: "v c[] u[] a[] r[]",
    steps: [
      ["d[]","abs(c) .* u"],
      ["u_c","sqrt(sum(d .^ 2))"],
      ["f[]","d .^ 2/u_c^2"],
      ["nu_e","max(1, floor(1/(sum(c .^ 4 .* r)/u_c^4 + 0.000001)))"],
      ["k","student_t(alpha, nu_e)"],
      ["u_1","v*u_c"],
      ["U","k*u_c"],
      ["b","0 - sum(c .* a)"],
      ["v_lo","v*exp(b - U)"],
      ["v_hi","v*exp(b + U)"],
    ],
    run: (scalars, columns, rows) => {
      const $alpha = scalars[0]
      const $v = scalars[1]
      const $c = columns[0]
      const $u = columns[1]
      const $a = columns[2]
      const $r = columns[3]
      const $d = []
      columns[4] = $d
      for (let i = 0; i < rows; i += 1) {
        $d.push((Math.abs($c[i]) * $u[i]))
      }
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += ($d[i] ** 2)
      const $u_c = Math.sqrt(sum1)
      scalars[2] = $u_c
      const $f = []
      columns[5] = $f
      for (let i = 0; i < rows; i += 1) {
        $f.push((($d[i] ** 2) / ($u_c ** 2)))
      }
      let sum2 = 0
      for (let i = 0; i < rows; i += 1) sum2 += (($c[i] ** 4) * $r[i])
      const $nu_e = Math.max(1, Math.floor((1 / ((sum2 / ($u_c ** 4)) + 0.000001))))
      scalars[3] = $nu_e
      const $k = studentT($alpha, $nu_e)
      scalars[4] = $k
      const $u_1 = ($v * $u_c)
      scalars[5] = $u_1
      const $U = ($k * $u_c)
      scalars[6] = $U
      let sum3 = 0
      for (let i = 0; i < rows; i += 1) sum3 += ($c[i] * $a[i])
      const $b = (0 - sum3)
      scalars[7] = $b
      const $v_lo = ($v * Math.exp(($b - $U)))
      scalars[8] = $v_lo
      const $v_hi = ($v * Math.exp(($b + $U)))
      scalars[9] = $v_hi
    },
  },
  "Probability of meeting the target": {
    constants: [],
    inputs: "v L u_c b nu_e r_a N_m",
    steps: [
      ["z","(log(L/v) - b)/u_c"],
      ["P_m","student_share(z, nu_e)"],
      ["k_r","student_t(2*r_a/N_m, nu_e)"],
      ["L_a","L*exp(-b - k_r*u_c)"],
    ],
    run: (scalars) => {
      const $v = scalars[0]
      const $L = scalars[1]
      const $u_c = scalars[2]
      const $b = scalars[3]
      const $nu_e = scalars[4]
      const $r_a = scalars[5]
      const $N_m = scalars[6]
      const $z = ((Math.log(($L / $v)) - $b) / $u_c)
      scalars[7] = $z
      const $P_m = studentShare($z, $nu_e)
      scalars[8] = $P_m
      const $k_r = studentT(((2 * $r_a) / $N_m), $nu_e)
      scalars[9] = $k_r
      const $L_a = ($L * Math.exp(((-$b) - ($k_r * $u_c))))
      scalars[10] = $L_a
    },
  },
  "Correlation of two figures": {
    constants: [],
    inputs: "d_1[] d_2[] u_1 u_2",
    steps: [
      ["rho","max(-1 + 1e-9, min(1 - 1e-9, sum(d_1 .* d_2)/(u_1*u_2)))"],
    ],
    run: (scalars, columns, rows) => {
      const $d_1 = columns[0]
      const $d_2 = columns[1]
      const $u_1 = scalars[0]
      const $u_2 = scalars[1]
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += ($d_1[i] * $d_2[i])
      const $rho = Math.max(((-1) + 1e-9), Math.min((1 - 1e-9), (sum1 / ($u_1 * $u_2))))
      scalars[2] = $rho
    },
  },
  "Both met": {
    constants: ["pi"],
    inputs: "P_1 P_2 rho t[] w[]",
    steps: [
      ["h","normal_quantile(min(max(P_1, 1e-12), 1 - 1e-12))"],
      ["k","normal_quantile(min(max(P_2, 1e-12), 1 - 1e-12))"],
      ["a","0.5*log((1 + rho)/(1 - rho))"],
      ["r[]","1 - 2 ./ (exp(2*a*t) + 1)"],
      ["P_b","max(0, P_1*P_2 + a/(2*pi)*sum(w .* sqrt(1 - r .^ 2) .* exp((h*k*r - (h^2 + k^2)/2) ./ (1 - r .^ 2))))"],
    ],
    run: (scalars, columns, rows) => {
      const $pi = scalars[0]
      const $P_1 = scalars[1]
      const $P_2 = scalars[2]
      const $rho = scalars[3]
      const $t = columns[0]
      const $w = columns[1]
      const $h = normalValue(Math.min(Math.max($P_1, 1e-12), (1 - 1e-12)))
      scalars[4] = $h
      const $k = normalValue(Math.min(Math.max($P_2, 1e-12), (1 - 1e-12)))
      scalars[5] = $k
      const $a = (0.5 * Math.log(((1 + $rho) / (1 - $rho))))
      scalars[6] = $a
      const $r = []
      columns[2] = $r
      for (let i = 0; i < rows; i += 1) {
        $r.push((1 - (2 / (Math.exp(((2 * $a) * $t[i])) + 1))))
      }
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += (($w[i] * Math.sqrt((1 - ($r[i] ** 2)))) * Math.exp((((($h * $k) * $r[i]) - ((($h ** 2) + ($k ** 2)) / 2)) / (1 - ($r[i] ** 2)))))
      const $P_b = Math.max(0, (($P_1 * $P_2) + (($a / (2 * $pi)) * sum1)))
      scalars[7] = $P_b
    },
  },
  "All met": {
    constants: [],
    inputs: "P_s P_b P_j",
    steps: [
      ["P_a","P_s*P_b/max(P_j, 1e-12)"],
    ],
    run: (scalars) => {
      const $P_s = scalars[0]
      const $P_b = scalars[1]
      const $P_j = scalars[2]
      const $P_a = (($P_s * $P_b) / Math.max($P_j, 1e-12))
      scalars[3] = $P_a
    },
  },
  "Uncertainty of the change between two tests": {
    constants: ["alpha"],
    inputs: "v_a v_b c_a[] c_b[] s[]",
    steps: [
      ["x_c","log(v_b/v_a)"],
      ["d_c","v_b/v_a - 1"],
      ["u_d","sqrt(sum(c_a .^ 2 + c_b .^ 2 - 2*s .* c_a .* c_b))"],
      ["P_l","normal_share(-(x_c/u_d))"],
      ["d_lo","exp(x_c - normal_quantile(1 - alpha/2)*u_d) - 1"],
      ["d_hi","exp(x_c + normal_quantile(1 - alpha/2)*u_d) - 1"],
    ],
    run: (scalars, columns, rows) => {
      const $alpha = scalars[0]
      const $v_a = scalars[1]
      const $v_b = scalars[2]
      const $c_a = columns[0]
      const $c_b = columns[1]
      const $s = columns[2]
      const $x_c = Math.log(($v_b / $v_a))
      scalars[3] = $x_c
      const $d_c = (($v_b / $v_a) - 1)
      scalars[4] = $d_c
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += ((($c_a[i] ** 2) + ($c_b[i] ** 2)) - (((2 * $s[i]) * $c_a[i]) * $c_b[i]))
      const $u_d = Math.sqrt(sum1)
      scalars[5] = $u_d
      const $P_l = normalShare((-($x_c / $u_d)))
      scalars[6] = $P_l
      const $d_lo = (Math.exp(($x_c - (normalValue((1 - ($alpha / 2))) * $u_d))) - 1)
      scalars[7] = $d_lo
      const $d_hi = (Math.exp(($x_c + (normalValue((1 - ($alpha / 2))) * $u_d))) - 1)
      scalars[8] = $d_hi
    },
  },
  "Spread of the mean of the directions": {
    constants: [],
    inputs: "lo_r[] hi_r[]",
    steps: [
      ["h","sqrt(sum(((hi_r - lo_r)/2).^2))/count(lo_r)"],
    ],
    run: (scalars, columns, rows) => {
      const $lo_r = columns[0]
      const $hi_r = columns[1]
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += ((($hi_r[i] - $lo_r[i]) / 2) ** 2)
      const $h = (Math.sqrt(sum1) / countOf($lo_r))
      scalars[0] = $h
    },
  },
  "Change between two tests": {
    constants: [],
    inputs: "v_1 v_2 h_1 h_2",
    steps: [
      ["d","v_2 - v_1"],
      ["s","d/v_1"],
      ["d_lo","d - sqrt(h_1^2 + h_2^2)"],
      ["d_hi","d + sqrt(h_1^2 + h_2^2)"],
    ],
    run: (scalars) => {
      const $v_1 = scalars[0]
      const $v_2 = scalars[1]
      const $h_1 = scalars[2]
      const $h_2 = scalars[3]
      const $d = ($v_2 - $v_1)
      scalars[4] = $d
      const $s = ($d / $v_1)
      scalars[5] = $s
      const $d_lo = ($d - Math.sqrt((($h_1 ** 2) + ($h_2 ** 2))))
      scalars[6] = $d_lo
      const $d_hi = ($d + Math.sqrt((($h_1 ** 2) + ($h_2 ** 2))))
      scalars[7] = $d_hi
    },
  },
  "Where two curves cross": {
    constants: [],
    inputs: "C_1 C_2 n_1 n_2",
    steps: [
      ["dp_x","exp(log(C_1/C_2)/(n_2 - n_1))"],
    ],
    run: (scalars) => {
      const $C_1 = scalars[0]
      const $C_2 = scalars[1]
      const $n_1 = scalars[2]
      const $n_2 = scalars[3]
      const $dp_x = Math.exp((Math.log(($C_1 / $C_2)) / ($n_2 - $n_1)))
      scalars[4] = $dp_x
    },
  },
  "Average of a raw series": {
    constants: [],
    inputs: "k[] r_k[] N_s s_s",
    steps: [
      ["n_eff","N_s/(1 + 2*sum((1 - k/N_s) .* r_k))"],
      ["u_s","s_s*sqrt((N_s - 1)/(N_s*(n_eff - 1)))"],
    ],
    run: (scalars, columns, rows) => {
      const $k = columns[0]
      const $r_k = columns[1]
      const $N_s = scalars[0]
      const $s_s = scalars[1]
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += ((1 - ($k[i] / $N_s)) * $r_k[i])
      const $n_eff = ($N_s / (1 + (2 * sum1)))
      scalars[2] = $n_eff
      const $u_s = ($s_s * Math.sqrt((($N_s - 1) / ($N_s * ($n_eff - 1)))))
      scalars[3] = $u_s
    },
  },
  "One figure for several homes": {
    constants: [],
    inputs: "r_h[] w_h[]",
    steps: [
      ["q_h[]","w_h .* r_h"],
      ["g_h[]","q_h/sum(q_h)"],
      ["q_b","sum(q_h)"],
      ["w_b","sum(w_h)"],
      ["v_u","q_b/w_b"],
      ["r_hi","max(r_h)"],
    ],
    run: (scalars, columns, rows) => {
      const $r_h = columns[0]
      const $w_h = columns[1]
      const $q_h = []
      columns[2] = $q_h
      for (let i = 0; i < rows; i += 1) {
        $q_h.push(($w_h[i] * $r_h[i]))
      }
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += $q_h[i]
      const $g_h = []
      columns[3] = $g_h
      for (let i = 0; i < rows; i += 1) {
        $g_h.push(($q_h[i] / sum1))
      }
      let sum2 = 0
      for (let i = 0; i < rows; i += 1) sum2 += $q_h[i]
      const $q_b = sum2
      scalars[0] = $q_b
      let sum3 = 0
      for (let i = 0; i < rows; i += 1) sum3 += $w_h[i]
      const $w_b = sum3
      scalars[1] = $w_b
      const $v_u = ($q_b / $w_b)
      scalars[2] = $v_u
      const $r_hi = largest($r_h)
      scalars[3] = $r_hi
    },
  },
  "One cause that several homes share": {
    constants: [],
    inputs: "g_h[] c_h[]",
    steps: [
      ["s_c","sum(g_h .* c_h)"],
    ],
    run: (scalars, columns, rows) => {
      const $g_h = columns[0]
      const $c_h = columns[1]
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += ($g_h[i] * $c_h[i])
      const $s_c = sum1
      scalars[0] = $s_c
    },
  },
  "Causes that are each home’s own": {
    constants: [],
    inputs: "g_h[] c_h[]",
    steps: [
      ["u_o","sqrt(sum((g_h .* c_h) .^ 2))"],
    ],
    run: (scalars, columns, rows) => {
      const $g_h = columns[0]
      const $c_h = columns[1]
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += (($g_h[i] * $c_h[i]) ** 2)
      const $u_o = Math.sqrt(sum1)
      scalars[0] = $u_o
    },
  },
  "Expected correction of the homes together": {
    constants: ["b_h"],
    inputs: "g_h[] b_h[] nu_h[]",
    steps: [
      ["b","sum(g_h .* b_h)"],
      ["nu_e","min(nu_h)"],
    ],
    run: (scalars, columns, rows) => {
      const $b_h = columns[1]
      const $g_h = columns[0]
      const $nu_h = columns[2]
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += ($g_h[i] * $b_h[i])
      const $b = sum1
      scalars[1] = $b
      const $nu_e = smallest($nu_h)
      scalars[2] = $nu_e
    },
  },
  "Uncertainty of the homes together": {
    constants: ["alpha"],
    inputs: "v u_o s_c[] b nu_e",
    steps: [
      ["u_c","sqrt(u_o^2 + sum(s_c .^ 2))"],
      ["U","student_t(alpha, nu_e)*u_c"],
      ["v_lo","v*exp(b - U)"],
      ["v_hi","v*exp(b + U)"],
    ],
    run: (scalars, columns, rows) => {
      const $alpha = scalars[0]
      const $v = scalars[1]
      const $u_o = scalars[2]
      const $s_c = columns[0]
      const $b = scalars[3]
      const $nu_e = scalars[4]
      let sum1 = 0
      for (let i = 0; i < rows; i += 1) sum1 += ($s_c[i] ** 2)
      const $u_c = Math.sqrt((($u_o ** 2) + sum1))
      scalars[5] = $u_c
      const $U = (studentT($alpha, $nu_e) * $u_c)
      scalars[6] = $U
      const $v_lo = ($v * Math.exp(($b - $U)))
      scalars[7] = $v_lo
      const $v_hi = ($v * Math.exp(($b + $U)))
      scalars[8] = $v_hi
    },
  },
  "Homes to be tested": {
    constants: [],
    inputs: "N_h N_t N_f z_s z_f",
    steps: [
      ["N_n","min(N_h, z_s + z_f*N_f)"],
      ["N_m","max(0, N_n - N_t)"],
    ],
    run: (scalars) => {
      const $N_h = scalars[0]
      const $N_t = scalars[1]
      const $N_f = scalars[2]
      const $z_s = scalars[3]
      const $z_f = scalars[4]
      const $N_n = Math.min($N_h, ($z_s + ($z_f * $N_f)))
      scalars[5] = $N_n
      const $N_m = Math.max(0, ($N_n - $N_t))
      scalars[6] = $N_m
    },
  },
  "Leakage allowed up to a stage": {
    constants: ["rho_0","s_h","u_A","C_o"],
    inputs: "q_t f_s q_s dp_r",
    steps: [
      ["q_a","f_s*q_t"],
      ["q_l","q_t - q_s"],
      ["s_u","q_s/q_t"],
      ["A_l","u_A*q_l/(s_h*C_o*sqrt(2*dp_r/rho_0))"],
    ],
    run: (scalars) => {
      const $rho_0 = scalars[0]
      const $s_h = scalars[1]
      const $u_A = scalars[2]
      const $C_o = scalars[3]
      const $q_t = scalars[4]
      const $f_s = scalars[5]
      const $q_s = scalars[6]
      const $dp_r = scalars[7]
      const $q_a = ($f_s * $q_t)
      scalars[8] = $q_a
      const $q_l = ($q_t - $q_s)
      scalars[9] = $q_l
      const $s_u = ($q_s / $q_t)
      scalars[10] = $s_u
      const $A_l = (($u_A * $q_l) / (($s_h * $C_o) * Math.sqrt(((2 * $dp_r) / $rho_0))))
      scalars[11] = $A_l
    },
  },
  "Leakage used by a stage": {
    constants: [],
    inputs: "q_e q_s",
    steps: [
      ["q_u","q_s - q_e"],
    ],
    run: (scalars) => {
      const $q_e = scalars[0]
      const $q_s = scalars[1]
      const $q_u = ($q_s - $q_e)
      scalars[2] = $q_u
    },
  },
  "Whether the next trade may start": {
    constants: [],
    inputs: "q_a q_s u_c b nu_e",
    steps: [
      ["P_s","student_share((log(q_a/q_s) - b)/u_c, nu_e)"],
    ],
    run: (scalars) => {
      const $q_a = scalars[0]
      const $q_s = scalars[1]
      const $u_c = scalars[2]
      const $b = scalars[3]
      const $nu_e = scalars[4]
      const $P_s = studentShare(((Math.log(($q_a / $q_s)) - $b) / $u_c), $nu_e)
      scalars[5] = $P_s
    },
  },
}
